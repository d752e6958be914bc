#!/usr/bin/env node
/** Starts the command line that `npm run build` has bundled, with compiled code kept between starts. */
import { existsSync } from 'node:fs';
import module from 'node:module';
import v8 from 'node:v8';

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
  // Most commands end within a second, of which V8 would spend a good part on merging functions into larger ones. Set
  // before there is code to be compiled or to be taken from the cache, which is kept apart by such settings.
  if (process.argv[2] !== 'serve') v8.setFlagsFromString('--max-inlined-bytecode-size=100');
  module.enableCompileCache();
  await import(bundle.href);
}
