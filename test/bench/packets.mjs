/** The installer's packet in every format: one full-size store, and many stores by one thread and by two. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { median, row } from './report.mjs';

/** @param work a folder for what is written @param fleet a folder of stores */
export function measurePackets(root, work, fleet, count, rounds) {
  const program = join(root, 'server/bin/fieldpair.js');
  const milliseconds = (...args) => {
    const began = performance.now();
    const paths = [program, 'packet', ...args, '--out', join(work, 'packets'), '--date', '2026-03-14'];
    const { status, stderr } = spawnSync(process.execPath, paths, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${paths.join(' ')} ended with ${status}: ${stderr}`);
    return performance.now() - began;
  };
  const times = (...args) => Array.from({ length: rounds }, () => milliseconds(...args));
  // The first start of a new build fills Node's compile cache.
  milliseconds(join(root, 'samples/small'));
  row('packet of a full-size store, all formats', median(times(join(root, 'samples/full'))), {
    unit: 'ms',
    limit: 3000,
  });
  const [one, two] = ['1', '2'].map((jobs) => median(times(fleet, '--jobs', jobs)));
  row(`packets of ${count} stores, one thread`, one, { unit: 'ms' });
  row(`packets of ${count} stores, two threads / one (1/1.7 wanted)`, two / one, { limit: 0.59, digits: 2 });
}
