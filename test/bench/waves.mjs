/** Waveforms of a bus against ngspice on the same circuit in the same run, and how their cost grows. */
import { join } from 'node:path';
import { build } from 'esbuild';
import { row } from './report.mjs';
import { compareWithSpice } from './spice-waves.mjs';

const best = (rounds, work) => {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const began = performance.now();
    work();
    least = Math.min(least, performance.now() - began);
  }
  return least;
};

/** `long` compares with the simulator over all 200 bits, which takes minutes. */
export async function measureWaves(root, work, { smoke, long }) {
  const outfile = join(work, 'waves.mjs');
  const shared = ['figures/waves', 'testing/network', 'physics/wave/bus-circuit', 'physics/wave/step-response'];
  const exported = [
    ...shared.map((path) => `export * from './shared/src/${path}.js';`),
    ...['drawn-waves', 'compare-waves'].map((path) => `export * from './test/outside/${path}.ts';`),
  ];
  await build({
    stdin: { contents: exported.join(''), resolveDir: root },
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
  });
  const engine = await import(outfile);
  const { busOf, testCable, testDevice, wavesOf } = engine;
  const edge = 250e-9;
  const bitTime = 1e-6;
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

  await compareWithSpice({ ...engine, built, edge, bitTime }, bitsOf(smoke ? 3 : long ? 200 : 50), (few) =>
    best(9, () => waves(built, few)),
  );
  for (const count of [8, 16, 32, 64]) {
    const took = best(7, () => waves(chain(count), bits));
    row(`waves: ${count} landings over ${bits.length} bits`, took, { unit: 'ms', digits: 1 });
  }
  for (const count of [100, 200, 400, 800]) {
    const took = best(7, () => waves(built, bitsOf(count)));
    row(`waves: 32 landings over ${count} bits`, took, { unit: 'ms', digits: 1 });
  }
}
