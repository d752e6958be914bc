#!/usr/bin/env node
/** Starts the command line that `npm run build` has bundled, with compiled code kept between starts. */
import { existsSync } from 'node:fs';
import module from 'node:module';

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
const bundle = new URL('../dist/cli.js', import.meta.url);

if (major < 22 || (major === 22 && minor < 12)) {
  console.error(
    `fieldpair: needs Node 22.12 or later, this is ${process.versions.node}; in a checkout, npx fieldpair brings its own`,
  );
  process.exitCode = 2;
} else if (!existsSync(bundle)) {
  console.error('fieldpair: not built yet; run: npm run build');
  process.exitCode = 2;
} else {
  module.enableCompileCache();
  await import(bundle.href);
}
