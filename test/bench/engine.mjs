/** The engine in one process: a fleet in memory, a keystroke in it, the figures of a long bus. */
import { join } from 'node:path';
import { build } from 'esbuild';
import { catalogueText, chainText, storeData, storeText } from './fleet.mjs';
import { median, row } from './report.mjs';

export async function measureEngine(root, work, size) {
  const outfile = join(work, 'engine.mjs');
  const contents = `export * from './language/src/index.ts'; export { createStudy } from './shared/src/index.ts';`;
  await build({
    stdin: { contents, resolveDir: root, loader: 'ts' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
  });
  const engine = await import(outfile);
  measureFleet(engine, size);
  measureMeter(engine);
}

function projectOf({ Project }, texts) {
  const project = new Project({
    resolve: (_, path) => path,
    read: (file) => (texts.has(file) ? { text: texts.get(file) } : { problem: 'it does not exist', missing: true }),
  });
  for (const file of texts.keys()) project.add(file);
  return project;
}

function measureFleet(engine, size) {
  const texts = new Map([['catalogue.pair', catalogueText]]);
  for (let index = 0; index < size; index++) texts.set(`store${index}.pair`, storeText(storeData(index)));
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const began = performance.now();
  const project = projectOf(engine, texts);
  const { findings } = project.check();
  row(`engine: reading and checking ${size} stores`, performance.now() - began, { unit: 'ms', limit: 5000 });
  if (findings.length) throw new Error(`The fleet is healthy, and yet: ${findings[0].message}`);
  globalThis.gc?.();
  row('engine: heap kept per store', (process.memoryUsage().heapUsed - before) / 1024 / size, {
    unit: 'KB',
    limit: 15,
    digits: 1,
  });
  const text = texts.get('store7.pair');
  const edits = [];
  for (let key = 0; key < 200; key++) {
    const changed = text.replace(/\d+ ft/, `${38 + (key % 9)} ft`).replace('Market', `Market ${key}`);
    const started = performance.now();
    project.add('store7.pair', changed);
    project.findingsOf('store7.pair');
    edits.push(performance.now() - started);
  }
  row('engine: keystroke to findings, median / 95th percentile', edits, { unit: 'ms', limit: 20, digits: 2 });
}

/** What a meter reads at all of 1,000 landings, each time from a new study of the network. */
function measureMeter(engine) {
  for (const shape of ['chain', 'ring']) {
    const texts = new Map([
      ['catalogue.pair', catalogueText],
      ['long.pair', chainText(1000, shape === 'ring')],
    ]);
    const [store] = projectOf(engine, texts).storesOf('long.pair');
    const times = [];
    for (let round = 0; round < 200; round++) {
      const study = engine.createStudy(store, store.buses[0]);
      // The shape is part of every check; only what the meter adds to it is measured.
      if (!study.shape.walk.length) throw new Error('The long bus has no landings.');
      const began = performance.now();
      const { meter } = study;
      if (round >= 20) times.push(performance.now() - began);
      if (!(meter[500]?.nominal > 0)) throw new Error('The long bus has no readings.');
    }
    row(`engine: meter readings of a ${shape} of 1,000 landings, median`, median(times), {
      unit: 'ms',
      limit: 2,
      digits: 2,
    });
  }
}
