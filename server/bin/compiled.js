'use strict';
/**
 * Loads a bundle in CommonJS with the code that V8 made of it at an earlier start.
 *
 * Node's own cache keeps what is compiled while a file is loaded, which are few of its functions, and leaves the others
 * to be compiled at every start when they first run. This one keeps all that had run when the program ended; it stands
 * in the same folder, and is left out where Node's is switched off.
 */
const { closeSync, fstatSync, openSync, readFileSync, renameSync, writeFileSync } = require('node:fs');
const nodeModule = require('node:module');
const { dirname, join } = require('node:path');
const { cachedDataVersionTag } = require('node:v8');
const { Script } = require('node:vm');

/** @param purpose one set of code is kept for each, since each runs other functions: the name of a command */
exports.load = function load(file, purpose) {
  const { directory } = nodeModule.enableCompileCache();
  // The bundle begins with the hash of its text: a number that says whether code was made of just this one.
  const text = readFileSync(file, 'latin1');
  const identity = Buffer.from(text.slice(0, text.indexOf('\n')));
  const kept = directory && join(directory, nameFor(file, purpose));
  const cachedData = kept && codeKept(kept, identity);
  const wrapper = `(function (exports, require, module, __filename, __dirname) {${text}\n})`;
  const script = new Script(wrapper, { filename: file, ...(cachedData && { cachedData }) });
  const module = { exports: {} };
  script.runInThisContext()(module.exports, nodeModule.createRequire(file), module, file, dirname(file));
  if (kept && script.cachedDataRejected !== false) {
    process.once('exit', () => keepCode(kept, Buffer.concat([identity, script.createCachedData()])));
  }
  return module.exports;
};

/** A name for each bundle, command, V8 with its settings and, since others may write to the folder too, user. */
function nameFor(file, purpose) {
  const place = dirname(file).replace(/\W+/g, '-').slice(-100);
  const command = /^[a-z]+$/.test(purpose) ? purpose : 'other';
  return ['fieldpair', command, cachedDataVersionTag(), process.getuid?.() ?? '', place].join('-');
}

/** The code in a file; undefined where there is none, or it is of another bundle or was put there by somebody else. */
function codeKept(file, identity) {
  let opened;
  try {
    opened = openSync(file);
    if (process.getuid && fstatSync(opened).uid !== process.getuid()) return undefined;
    const found = readFileSync(opened);
    return found.subarray(0, identity.length).equals(identity) ? found.subarray(identity.length) : undefined;
  } catch {
    return undefined;
  } finally {
    if (opened !== undefined) closeSync(opened);
  }
}

/** In one step, so that no other start reads half of it; where nothing can be written, nothing is kept. */
function keepCode(file, content) {
  try {
    const fresh = `${file}.${process.pid}`;
    writeFileSync(fresh, content);
    renameSync(fresh, file);
  } catch {
    // The next start compiles again.
  }
}
