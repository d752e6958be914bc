/**
 * The linear circuit in which waves travel, as plain data: nodes, uniform lines between them, and what hangs across
 * the pair at each node. One mode, the difference of the two wires; the common mode is not modelled.
 */

/** The electrical make of a cable, per metre. */
export interface Medium {
  /** One conductor's resistance to direct current; above 0. */
  readonly resistance: number;
  /** Of the pair, at high frequency: without what the inside of the wires adds. */
  readonly inductance: number;
  readonly capacitance: number;
  /** Whether the wires' resistance and inner inductance follow the skin effect; else it stays that of direct current. */
  readonly skin: boolean;
}

export interface Line {
  readonly from: number;
  readonly to: number;
  /** Metres. */
  readonly length: number;
  /** Which of the media; {@link noMedium} for a joint. */
  readonly medium: number;
}

export const noMedium = -1;

/** A resistor with a capacitor in series, across the pair. */
export interface SeriesTermination {
  readonly node: number;
  readonly resistance: number;
  readonly capacitance: number;
}

/** All of it is connected: lines lead from every node to every other. */
export interface WaveCircuit {
  readonly nodeCount: number;
  readonly media: readonly Medium[];
  readonly lines: readonly Line[];
  /** Across the pair at each node, in siemens and farads. */
  readonly conductances: Float64Array;
  readonly capacitances: Float64Array;
  readonly terminations: readonly SeriesTermination[];
}

/** A line shorter than this is a joint: 1 mm, which a wave passes in 5 ps. */
export const jointLength = 1e-3;

/** Time that the wave takes through a metre. */
export const delayPerMetre = ({ inductance, capacitance }: Medium): number => Math.sqrt(inductance * capacitance);

/**
 * Numbers for the nodes that lines join to one of them, which gets 0; -1 for the others. `count` is how many there are.
 */
export function connectedTo(
  node: number,
  nodeCount: number,
  lines: readonly Pick<Line, 'from' | 'to'>[],
): { readonly numbers: Int32Array; readonly count: number } {
  const neighbours: number[][] = Array.from({ length: nodeCount }, () => []);
  for (const { from, to } of lines) {
    neighbours[from]!.push(to);
    neighbours[to]!.push(from);
  }
  const numbers = new Int32Array(nodeCount).fill(-1);
  const found = [node];
  numbers[node] = 0;
  for (let position = 0; position < found.length; position++) {
    for (const next of neighbours[found[position]!]!) {
      if (numbers[next] !== -1) continue;
      numbers[next] = found.length;
      found.push(next);
    }
  }
  return { numbers, count: found.length };
}
