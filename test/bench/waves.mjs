/** Waveforms of a bus against ngspice on the same circuit in the same run, and how their cost grows. */
import { join } from 'node:path';
import { Simulation } from 'eecircuit-engine';
import { build } from 'esbuild';
import { row } from './report.mjs';

const best = (rounds, work) => {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const began = performance.now();
    work();
    least = Math.min(least, performance.now() - began);
  }
  return least;
};

export async function measureWaves(root, work, smoke) {
  const outfile = join(work, 'waves.mjs');
  const exported = ['figures/waves', 'testing/network'].map((path) => `export * from './shared/src/${path}.js';`);
  await build({
    stdin: { contents: `${exported.join('')}export * from './test/outside/drawn-waves.ts';`, resolveDir: root },
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
  });
  const { busOf, netlistOf, sourceOf, testCable, testDevice, wavesOf } = await import(outfile);
  const edge = 250e-9;
  const bitTime = 1e-6;
  const output = 64.2857142857;
  const cable = testCable({ resistance: 0.053 });
  const device = testDevice('Any', { edge, capacitance: 15e-12 });
  const chain = (count) => {
    const bus = busOf('rs485', { rate: 1 / bitTime, cable }).from('n0', { device, terminate: 120 });
    for (let index = 1; index < count; index++) {
      bus.to(`n${index}`, 10, { device, ...(index === count - 1 && { terminate: 120 }) });
    }
    return bus.built();
  };
  const bitsOf = (count) => Array.from({ length: count }, (_, bit) => ((bit * 7 + (bit >> 2)) % 3 ? 1 : 0)).join('');
  const waves = (built, bits, more) =>
    wavesOf(built.study, { driver: 0, pattern: `0${bits}`, nominalOnly: true, ...more });

  const built = chain(32);
  const bits = bitsOf(200);
  row(
    'waves: 32 landings over 200 bits',
    best(9, () => waves(built, bits)),
    { unit: 'ms', limit: 50, digits: 1 },
  );
  const everyCorner = best(5, () => waves(built, bits, { nominalOnly: false }));
  row('waves: the same with best and worst over tolerances', everyCorner, { unit: 'ms', digits: 1 });

  // The simulator's cost grows with the square of the time simulated: a few bits are enough to wait for.
  const few = bitsOf(smoke ? 3 : 10);
  const ours = best(9, () => waves(built, few));
  const simulation = new Simulation();
  await simulation.start();
  const stop = few.length * bitTime;
  const began = performance.now();
  simulation.setNetList(
    [
      '* waves',
      sourceOf({ bits: `0${few}`, bitTime, edge }),
      ...netlistOf({ built, faults: [], driver: 0 }, output),
      `.tran ${edge / 6} ${stop} 0 ${edge / 6}`,
      '.end',
    ].join('\n'),
  );
  const { data } = await simulation.runSim();
  if (data.length === 0) throw new Error(`ngspice failed: ${simulation.getError().join(' ')}`);
  const theirs = performance.now() - began;
  row(`waves: 32 landings over ${few.length} bits`, ours, { unit: 'ms', digits: 1 });
  row(`waves: ngspice on the same, ${data[0].values.length} points`, theirs, { unit: 'ms' });
  row('waves: ours / ngspice', ours / theirs, { limit: 1 / 50, digits: 5 });

  for (const count of [8, 16, 32, 64]) {
    const took = best(7, () => waves(chain(count), bits));
    row(`waves: ${count} landings over ${bits.length} bits`, took, { unit: 'ms', digits: 1 });
  }
  for (const count of [100, 200, 400, 800]) {
    const took = best(7, () => waves(built, bitsOf(count)));
    row(`waves: 32 landings over ${count} bits`, took, { unit: 'ms', digits: 1 });
  }
}
