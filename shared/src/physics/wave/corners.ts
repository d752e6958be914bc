/** Which values a waveform's figures are varied over. */
import { biasTolerance, lowered, raised, supplyTolerance, terminatorTolerance } from '../tolerance.js';
import { asStated, type WaveCorner } from './bus-circuit.js';
import type { DriverGrade, Signalling } from './drive.js';
import { impedanceTolerance } from './medium.js';

/**
 * What a port may hang across the pair that states no capacitance, with its protection and connector. Common practice,
 * no published source.
 */
export const usualPortCapacitance = 25e-12;

/**
 * Share of what devices may load the pair with that they load it with at least. Unit loads are the most there is; CAN
 * inputs lie between 20 and 100 kohm (ISO 11898-2, from memory), and without them a pair that is let go would never empty.
 */
const leastLoad: Readonly<Record<Signalling['driven'], number>> = { 'both bits': 0, 'dominant bit': 0.2 };

export interface GradedCorner {
  readonly corner: WaveCorner;
  readonly driver: DriverGrade;
  readonly edge: number;
}

export const nominalWave = (edge: number): GradedCorner => ({ corner: asStated, driver: 'usual', edge });

/**
 * The least driver on the thinnest wire, against the strongest bias, with terminators that miss the cable's impedance
 * from either side; the most driver, whose low resistance throws waves back, on wires that damp them
 * least; and the most driver with little in its way. `edges` are those that the driver may have, the fastest first.
 */
export function extremeWaves(possible: readonly number[], driven: Signalling['driven']): readonly GradedCorner[] {
  const edges = [...new Set(possible)];
  const heavy = {
    wires: 'high',
    load: 1,
    bias: { resistance: lowered(1, biasTolerance), supply: raised(1, supplyTolerance) },
    portCapacitance: usualPortCapacitance,
  } as const;
  const light = { wires: 'low', load: leastLoad[driven] } as const;
  const worst: readonly WaveCorner[] = [
    { ...heavy, impedance: raised(1, impedanceTolerance), terminator: lowered(1, terminatorTolerance) },
    { ...heavy, impedance: lowered(1, impedanceTolerance), terminator: raised(1, terminatorTolerance) },
  ];
  const best: WaveCorner = {
    ...light,
    impedance: 1,
    terminator: raised(1, terminatorTolerance),
    bias: { resistance: raised(1, biasTolerance), supply: lowered(1, supplyTolerance) },
    portCapacitance: 0,
  };
  return [
    ...worst.flatMap((corner) =>
      edges.flatMap((edge) => (['least', 'most'] as const).map((driver) => ({ corner, driver, edge }))),
    ),
    ...edges.map((edge) => ({ corner: best, driver: 'most', edge }) as const),
  ];
}

/** The same in words. */
export const cornersInWords: readonly string[] = [
  'driver from the least to the most of its standard',
  "cable's impedance 10 % and resistance 5 % either way",
  'terminators and bias resistors 5 %, bias supply 5 %',
  'ports from no load (CAN: a fifth) to the load that they state, and up to 25 pF where they state no capacitance',
];
