#!/usr/bin/env node
'use strict';
/** Starts the command line that `npm run build` has bundled. */
const { existsSync } = require('node:fs');
const { join } = require('node:path');

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
const bundle = join(__dirname, '../dist/cli.cjs');

if (major < 22 || (major === 22 && minor < 12)) {
  console.error(
    `fieldpair: needs Node 22.12 or later, this is ${process.versions.node}; in a checkout, npx fieldpair brings its own`,
  );
  process.exitCode = 2;
} else if (!existsSync(bundle)) {
  console.error('fieldpair: not built yet; run: npm run build');
  process.exitCode = 2;
} else {
  const command = process.argv[2] ?? '';
  if (command !== 'serve') require('./short-run.js').expectShortRun();
  require('./compiled.js').load(bundle, command);
}
