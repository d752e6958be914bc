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

/** Nodes that a driver's current reaches, with what is between them; in the order of the whole circuit. */
export function reachableFrom(
  circuit: WaveCircuit,
  node: number,
): { readonly circuit: WaveCircuit; nodes: Int32Array } {
  const neighbours: number[][] = Array.from({ length: circuit.nodeCount }, () => []);
  for (const { from, to } of circuit.lines) {
    neighbours[from]!.push(to);
    neighbours[to]!.push(from);
  }
  const renumbered = new Int32Array(circuit.nodeCount).fill(-1);
  const found = [node];
  renumbered[node] = 0;
  for (let position = 0; position < found.length; position++) {
    for (const next of neighbours[found[position]!]!) {
      if (renumbered[next] !== -1) continue;
      renumbered[next] = found.length;
      found.push(next);
    }
  }
  const at = (old: number) => renumbered[old]!;
  return {
    nodes: renumbered,
    circuit: {
      nodeCount: found.length,
      media: circuit.media,
      lines: circuit.lines
        .filter(({ from }) => at(from) !== -1)
        .map((line) => ({ ...line, from: at(line.from), to: at(line.to) })),
      conductances: Float64Array.from(found, (old) => circuit.conductances[old]!),
      capacitances: Float64Array.from(found, (old) => circuit.capacitances[old]!),
      terminations: circuit.terminations
        .filter((termination) => at(termination.node) !== -1)
        .map((termination) => ({ ...termination, node: at(termination.node) })),
    },
  };
}
