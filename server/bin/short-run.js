'use strict';
/** Has V8 spend less on optimising code that runs for less than a second. */
const v8 = require('node:v8');

/**
 * Most of these take from what V8 does to a function that has become hot, which makes it run some per cent faster and pays
 * after seconds. On one processor all of it is time that the work waits for; measured on checks of 1,000 stores.
 */
const settings = [
  // A heap this small is marked at once, without noting every change to it while that goes on.
  '--no-incremental-marking',
  // Later: what has run ten thousand times goes on for longer than what has run three thousand times.
  '--invocation-count-for-turbofan=10000',
  '--max-inlined-bytecode-size=60',
  '--max-inlined-bytecode-size-cumulative=200',
  '--no-turbo-jt',
  '--no-turbo-loop-peeling',
  '--no-turbo-loop-rotation',
  '--no-turbo-loop-variable',
  '--no-turbo-move-optimization',
  // What is dropped for not having run lately would be missing from the code that is kept for the next start.
  '--no-flush-bytecode',
];

exports.expectShortRun = function expectShortRun() {
  loadNodeParts();
  for (const setting of settings) v8.setFlagsFromString(setting);
};

/** Node's own modules come compiled, which V8 takes only as long as its settings are the usual ones. */
function loadNodeParts() {
  for (const name of ['child_process', 'events', 'module', 'os', 'url', 'util', 'vm', 'worker_threads']) {
    require(`node:${name}`);
  }
  return [process.stdout, process.stderr];
}
