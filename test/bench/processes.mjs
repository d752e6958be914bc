/** Whole processes: a check of a fleet against a general-purpose parser that merely loads the same data. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { median, row } from './report.mjs';

export function compareProcesses(root, fleet, rounds) {
  const check = [join(root, 'server/bin/fieldpair.js'), 'check', fleet, '--format', 'json'];
  const load = [join(root, 'test/bench/load-yaml.mjs'), fleet];
  compare('', (args) => milliseconds(process.execPath, args), check, load, rounds);
  // With one core to itself, V8 optimises code in time that is then lacking for the work.
  if (spawnSync('taskset', ['-c', '0', 'true']).status === 0) {
    const onOneCore = (args) => milliseconds('taskset', ['-c', '0', process.execPath, ...args]);
    compare(', pinned to one core', onOneCore, check, load, rounds);
  }
}

/** Both in turn, so that whatever else the machine does meets them alike. */
function compare(where, time, check, load, rounds) {
  // The first start of a new build fills Node's compile cache.
  time(check);
  const checks = [];
  const loads = [];
  for (let round = 0; round < rounds; round++) {
    checks.push(time(check));
    loads.push(time(load));
  }
  row(`fieldpair check${where}, median`, median(checks), { unit: 'ms' });
  row(`js-yaml loading the same data${where}, median`, median(loads), { unit: 'ms' });
  row(`check / js-yaml${where}`, median(checks) / median(loads), { limit: 1, digits: 2 });
}

function milliseconds(program, args) {
  const began = performance.now();
  const { status, stderr } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  return performance.now() - began;
}
