/**
 * What an ohmmeter reads across the pair with everything connected and nothing powered.
 *
 * A resistance between two points rises with every resistance of the network (Rayleigh's monotonicity law), so that
 * the least and the most reading are those of the two corners where every part is at its least or at its most.
 */
import type { Known, Range } from '../known.js';
import { type Ohms, ohms } from '../quantity.js';
import { type BusCircuit, type Corner, nominalCorner } from './circuit.js';
import { biasTolerance, lowered, meterTolerance, raised, terminatorTolerance } from './tolerance.js';

/**
 * An unpowered supply may be anything between a short and a gap between its rail and common, so that a bias network
 * may load the reading or not. The expected reading counts it, as commissioning practice does.
 */
const leastCorner: Corner = {
  run: 'low',
  terminator: lowered(1, terminatorTolerance),
  load: 1,
  straight: { resistance: lowered(1, biasTolerance), supply: 0 },
  crossed: { resistance: lowered(1, biasTolerance), supply: 0 },
  rail: 'joined',
};
const mostCorner: Corner = {
  run: 'high',
  terminator: raised(1, terminatorTolerance),
  // A unit load is the most that a port may draw; how much less it draws, nothing tells.
  load: 0,
  straight: { resistance: raised(1, biasTolerance), supply: 0 },
  crossed: { resistance: raised(1, biasTolerance), supply: 0 },
  rail: 'open',
};

/** The reading at every landing; infinite where no current can flow, which is what an open bus is. */
export function meterReadings(circuit: BusCircuit): Known<Range<Ohms>>[] {
  const { pair } = circuit;
  const nominal = pair.resistances(circuit.values(nominalCorner));
  const least = pair.resistances(circuit.values(leastCorner));
  const most = pair.resistances(circuit.values(mostCorner));
  return circuit.bus.landings.map(({ index }) => {
    const missing = circuit.missing(index);
    if (missing !== undefined) return { unknown: missing };
    return {
      nominal: ohms(nominal[index]!),
      low: ohms(Math.max(0, lowered(least[index]!, meterTolerance.share) - meterTolerance.leads)),
      high: ohms(raised(most[index]!, meterTolerance.share) + meterTolerance.leads),
    };
  });
}
