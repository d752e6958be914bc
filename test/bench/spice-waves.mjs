/**
 * Waveforms against ngspice: the same circuit and bits in the same run.
 *
 * The simulator is set up to be as quick as it can be while it still agrees within 2 % of the driver's swing: an edge of
 * 9 corners instead of a curve, and no corners of its own where waves arrive (REL=2), which alone makes it over ten times
 * as fast. Its step is bounded by a sixth of the edge, more than what lies between our points. What it takes grows with
 * the square of the time simulated and more.
 */
import { Simulation } from 'eecircuit-engine';
import { row } from './report.mjs';

const output = 64.2857142857;
const coarseEdge = { sigmas: 3, corners: 9 };
const agreed = 0.02;

/** `timeOf` measures ours for bits. */
export async function compareWithSpice({ built, edge, bitTime, ...engine }, bits, timeOf) {
  const ours = timeOf(bits);
  const { data, took: theirs } = await simulated([
    engine.sourceOf({ bits: `0${bits}`, bitTime, edge }, [0, 1], coarseEdge),
    `RS source n0 ${output}`,
    ...engine.netlistOf({ built, faults: [] }, 'REL=2'),
    `.tran ${edge / 6} ${bits.length * bitTime} 0 ${edge / 6}`,
  ]);
  const over = `32 landings over ${bits.length} bits`;
  row(`waves: ${over}`, ours, { unit: 'ms', digits: 1 });
  row(`waves: ngspice on the same, ${data[0].values.length} points`, theirs, { unit: 'ms' });
  row('waves: ours / ngspice', ours / theirs, { limit: 1 / 50, digits: 6 });
  const apart = difference({ built, edge, bitTime, ...engine }, bits, data);
  row('waves: the two differ, of the swing, skin effect aside', apart, { limit: agreed, digits: 4 });
}

async function simulated(lines) {
  const simulation = new Simulation();
  await simulation.start();
  const began = performance.now();
  simulation.setNetList(['* waves', ...lines, '.end'].join('\n'));
  const { data } = await simulation.runSim();
  const took = performance.now() - began;
  // A run that failed does not throw: it has no data, and the reason among the errors.
  if (data.length === 0) throw new Error(`ngspice failed: ${simulation.getError().join(' ')}`);
  return { data, took };
}

/** The largest at any landing. */
function difference({ built, edge, bitTime, ...engine }, bits, data) {
  const { asStated, edgePerSigma, largestDifference, stepResponse, WaveBus, withoutSkin } = engine;
  const bus = WaveBus.of(built.bus, 20, [], 0);
  const drive = { conductance: 1 / output, sigma: edge / edgePerSigma };
  const { start, spacing, rows, ends } = stepResponse(withoutSkin(bus.circuitAt(asStated)), drive);
  const raised = Array.from(`00${bits}`, (bit) => bit === '1');
  const values = (name) => data.find((one) => one.name.toLowerCase() === name).values;
  const apart = built.bus.landings.map(({ index }) => {
    const node = bus.nodes[index];
    const rise = { start, spacing, row: rows[node], end: ends[node] };
    const points = { time: values('time'), volts: values(`v(n${index})`) };
    return largestDifference(raised, { lower: 0, rise, fall: rise }, bitTime, points);
  });
  return Math.max(...apart);
}
