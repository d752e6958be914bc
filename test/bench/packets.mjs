/**
 * The installer's packet in every format: one full-size store; and many stores by the whole command, on one core (pinned
 * by taskset) and on two.
 *
 * Two threads against one on the same two cores is shown beside it and is another question: V8 compiles and collects
 * garbage in threads of its own, so that a lone thread already has a good part of the second core.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { median, row } from './report.mjs';

/** @param work a folder for what is written @param fleet a folder of stores */
export function measurePackets(root, work, fleet, count, rounds) {
  const program = join(root, 'server/bin/fieldpair.js');
  const milliseconds = (args, cores = []) => {
    const began = performance.now();
    const command = [...cores, process.execPath, program, 'packet', ...args, '--out', join(work, 'packets')];
    const { status, stderr } = spawnSync(command[0], [...command.slice(1), '--date', '2026-03-14'], {
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`${command.join(' ')} ended with ${status}: ${stderr}`);
    return performance.now() - began;
  };
  // The first start of a new build fills Node's compile cache.
  milliseconds([join(root, 'samples/small')]);
  const full = Array.from({ length: rounds }, () => milliseconds([join(root, 'samples/full')]));
  row('packet of a full-size store, all formats', median(full), { unit: 'ms', limit: 3000 });

  const [one, two] = ['1', '2'].map((jobs) => milliseconds([fleet, '--jobs', jobs]));
  row(`packets of ${count} stores, two threads on two cores`, two, { unit: 'ms' });
  row(`packets of ${count} stores, one thread / two, both on two cores`, one / two, { digits: 2 });
  if (spawnSync('taskset', ['-c', '0', 'true']).status !== 0) return;
  const onOne = milliseconds([fleet], ['taskset', '-c', '0']);
  const onTwo = Math.min(two, milliseconds([fleet], ['taskset', '-c', '0,1']));
  row(`packets of ${count} stores, two cores / one (1/1.7 wanted)`, onTwo / onOne, { limit: 0.59, digits: 2 });
}
