/**
 * Nodal analysis of a network of resistors: any graph, loops, islands, open and shorted branches. Node voltages and
 * the resistance between the two nodes of a branch follow from one elimination; for a tree it takes linear time.
 */
import { leastDegreeOrder } from './elimination-order.js';
import {
  type Factor,
  factorOf,
  type Pattern,
  patternOf,
  type SelectedInverse,
  selectedInverseOf,
  solveInPlace,
} from './factor.js';

/** The node that voltages are measured against. */
export const ground = -1;

/** A resistance up to this is a joint: 1 nohm, far below any contact. It keeps the arithmetic away from 1/0. */
export const jointOhms = 1e-9;

/** A resistance from this up is a gap: 1 Tohm, far above any insulation. */
export const gapOhms = 1e12;

/** The conductance of a branch as it is computed with: 0 for a gap, and never infinite. */
export function conductanceOf(resistance: number): number {
  return resistance < gapOhms ? 1 / Math.max(resistance, jointOhms) : 0;
}

/** Branches by their two nodes (or {@link ground}); which of them are joints is part of the structure. */
export class NodalStructure {
  readonly pattern: Pattern;
  /** Per node: its row, the same for nodes that joints make one; {@link ground} when they reach ground. */
  private readonly rowOf: Int32Array;
  /** Per branch: the rows of its two nodes, or {@link ground}; alike for a joint. */
  readonly fromRows: Int32Array;
  readonly toRows: Int32Array;

  /**
   * `joint` tells of each branch whether it makes its two nodes one. `order` lists all nodes in the order of
   * elimination; left out, one of least degree is found.
   */
  constructor(
    readonly nodeCount: number,
    readonly from: Int32Array,
    readonly to: Int32Array,
    joint: Uint8Array,
    order?: Int32Array,
  ) {
    const groups = joinedGroups(nodeCount, from, to, (branch) => joint[branch] === 1);
    const grounded = groupOf(groups, nodeCount);
    this.rowOf = new Int32Array(nodeCount).fill(-2);
    let size = 0;
    for (const node of order ?? nodeOrder(nodeCount, from, to)) {
      const group = groupOf(groups, node);
      if (group === grounded) this.rowOf[node] = ground;
      else {
        if (this.rowOf[group] === -2) this.rowOf[group] = size++;
        this.rowOf[node] = this.rowOf[group]!;
      }
    }
    this.fromRows = from.map((node) => this.row(node));
    this.toRows = to.map((node) => this.row(node));
    this.pattern = this.assemblePattern(size);
  }

  /** The row of a node in the matrix, or {@link ground}. */
  row(node: number): number {
    return node === ground ? ground : this.rowOf[node]!;
  }

  private assemblePattern(size: number): Pattern {
    const { fromRows, toRows } = this;
    const rowStarts = new Int32Array(size + 1);
    const across = new Int32Array(fromRows.length);
    let entries = 0;
    for (let branch = 0; branch < fromRows.length; branch++) {
      const left = fromRows[branch]!;
      const right = toRows[branch]!;
      if (left === right || left === ground || right === ground) continue;
      rowStarts[Math.max(left, right) + 1]!++;
      across[entries++] = branch;
    }
    for (let row = 0; row < size; row++) rowStarts[row + 1]! += rowStarts[row]!;
    const next = rowStarts.slice();
    const columns = new Int32Array(entries);
    const sources = new Int32Array(entries);
    for (let index = 0; index < entries; index++) {
      const branch = across[index]!;
      const left = fromRows[branch]!;
      const right = toRows[branch]!;
      const entry = next[Math.max(left, right)]!++;
      columns[entry] = Math.min(left, right);
      sources[entry] = branch;
    }
    return patternOf(size, rowStarts, columns, sources);
  }

  /** Eliminates with these conductances, one a branch, joints' ignored. */
  solve(conductances: Float64Array): NodalSolution {
    return new NodalSolution(this, conductances);
  }
}

/** A network solved: asks of it are cheap. */
export class NodalSolution {
  private readonly factor: Factor;
  private readonly islands: Int32Array;
  private inverse?: SelectedInverse;

  constructor(
    private readonly structure: NodalStructure,
    conductances: Float64Array,
  ) {
    const { fromRows, toRows, pattern } = structure;
    const { size } = pattern;
    const diagonal = new Float64Array(size);
    const entries = new Float64Array(fromRows.length);
    const islands = eachAlone(size + 1);
    for (let branch = 0; branch < fromRows.length; branch++) {
      const conductance = conductances[branch]!;
      const left = fromRows[branch]!;
      const right = toRows[branch]!;
      if (left === right || !(0 < conductance)) continue;
      entries[branch] = -conductance;
      if (left !== ground) diagonal[left]! += conductance;
      if (right !== ground) diagonal[right]! += conductance;
      join(islands, left === ground ? size : left, right === ground ? size : right);
    }
    // An island that nothing ties to ground is tied to it at one node. No current flows there, so that it changes no
    // voltage between two nodes of the island.
    const tied = new Uint8Array(size + 1);
    tied[groupOf(islands, size)] = 1;
    for (let row = size - 1; 0 <= row; row--) {
      const island = groupOf(islands, row);
      if (tied[island]) continue;
      tied[island] = 1;
      diagonal[row]! += diagonal[row] || 1;
    }
    this.islands = islands;
    this.factor = factorOf(pattern, entries, diagonal);
  }

  /** Whether current can flow between two nodes. */
  connected(left: number, right: number): boolean {
    return groupOf(this.islands, this.islandIndex(left)) === groupOf(this.islands, this.islandIndex(right));
  }

  /**
   * Resistance between two nodes that share a branch (one of no conductance will do): 0 for one and the same,
   * infinite where no current can flow.
   */
  resistanceBetween(left: number, right: number): number {
    const first = this.structure.row(left);
    const second = this.structure.row(right);
    if (first === second) return 0;
    if (!this.connected(left, right)) return Number.POSITIVE_INFINITY;
    this.inverse ??= selectedInverseOf(this.factor);
    const { diagonal, values } = this.inverse;
    if (first === ground || second === ground) return diagonal[Math.max(first, second)]!;
    const column = Math.min(first, second);
    const row = Math.max(first, second);
    const { columnStarts } = this.structure.pattern;
    let slot = columnStarts[column]!;
    while (slot < columnStarts[column + 1]! && this.factor.rows[slot] !== row) slot++;
    if (slot === columnStarts[column + 1]) throw new RangeError('resistance between nodes that share no branch');
    return Math.max(0, diagonal[first]! + diagonal[second]! - 2 * values[slot]!);
  }

  /** Node voltages for currents driven into each node from ground. */
  voltages(currents: Float64Array): Float64Array {
    const { structure } = this;
    const vector = new Float64Array(structure.pattern.size);
    for (let node = 0; node < structure.nodeCount; node++) {
      const row = structure.row(node);
      if (row !== ground) vector[row]! += currents[node]!;
    }
    solveInPlace(this.factor, vector);
    const voltages = new Float64Array(structure.nodeCount);
    for (let node = 0; node < structure.nodeCount; node++) {
      const row = structure.row(node);
      if (row !== ground) voltages[node] = vector[row]!;
    }
    return voltages;
  }

  private islandIndex(node: number): number {
    const row = this.structure.row(node);
    return row === ground ? this.structure.pattern.size : row;
  }
}

function nodeOrder(nodeCount: number, from: Int32Array, to: Int32Array): Int32Array {
  const inner = Array.from(from.keys()).filter((branch) => from[branch] !== ground && to[branch] !== ground);
  return leastDegreeOrder(
    nodeCount,
    inner.map((branch) => from[branch]!),
    inner.map((branch) => to[branch]!),
  );
}

/** Groups of nodes that chosen branches join; ground is the node past the last one. */
function joinedGroups(
  nodeCount: number,
  from: Int32Array,
  to: Int32Array,
  chosen: (branch: number) => boolean,
): Int32Array {
  const groups = eachAlone(nodeCount + 1);
  for (let branch = 0; branch < from.length; branch++) {
    if (!chosen(branch)) continue;
    join(groups, from[branch] === ground ? nodeCount : from[branch]!, to[branch] === ground ? nodeCount : to[branch]!);
  }
  return groups;
}

function eachAlone(count: number): Int32Array {
  const groups = new Int32Array(count);
  for (let member = 0; member < count; member++) groups[member] = member;
  return groups;
}

function join(groups: Int32Array, left: number, right: number): void {
  groups[groupOf(groups, left)] = groupOf(groups, right);
}

function groupOf(groups: Int32Array, member: number): number {
  let group = member;
  while (groups[group] !== group) {
    groups[group] = groups[groups[group]!]!;
    group = groups[group]!;
  }
  return group;
}
