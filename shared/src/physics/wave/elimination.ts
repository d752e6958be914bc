/**
 * The order of the work that solves a circuit at any frequency, found once: which node is eliminated when, and which
 * entry each step changes. The driver's node comes last, so that its current needs no forward sweep. A tree gets no
 * new entries; a loop gets few.
 */
import { leastDegreeOrder } from '../elimination-order.js';

export interface Elimination {
  /** Rows; nodes that joints make one share a row. The last row is the driver's. */
  readonly size: number;
  readonly rowOf: Int32Array;
  /** Per line: the entry between its two rows, or -1 where they are one. */
  readonly entryOf: Int32Array;
  readonly entryCount: number;
  /** Entries below the diagonal of each row's column: from `starts[row]` to the next. Entries are numbered so. */
  readonly starts: Int32Array;
  readonly rows: Int32Array;
  /** For every pair of entries of a column, in order: the entry that their product changes; -1 for the diagonal. */
  readonly changes: Int32Array;
}

/** `joints` tells of each line whether it makes its nodes one. */
export function eliminationOf(
  nodeCount: number,
  from: readonly number[],
  to: readonly number[],
  joints: readonly boolean[],
  driver: number,
): Elimination {
  const group = Int32Array.from({ length: nodeCount }, (_, node) => node);
  const groupOf = (node: number): number => {
    let member = node;
    while (group[member] !== member) {
      group[member] = group[group[member]!]!;
      member = group[member]!;
    }
    return member;
  };
  for (let line = 0; line < from.length; line++) {
    if (joints[line]) group[groupOf(from[line]!)] = groupOf(to[line]!);
  }
  const left = from.map(groupOf);
  const right = to.map(groupOf);
  const rowOf = new Int32Array(nodeCount).fill(-1);
  let size = 0;
  for (const node of leastDegreeOrder(nodeCount, left, right, groupOf(driver))) {
    // Members of a group that do not stand for it are isolated vertices of the graph of groups.
    if (groupOf(node) === node) rowOf[node] = size++;
  }
  for (let node = 0; node < nodeCount; node++) rowOf[node] = rowOf[groupOf(node)]!;

  const columns = Array.from({ length: size }, () => new Set<number>());
  for (let line = 0; line < from.length; line++) {
    const [low, high] = sorted(rowOf[from[line]!]!, rowOf[to[line]!]!);
    if (low !== high) columns[low]!.add(high);
  }
  for (const below of columns) {
    const rows = [...below].sort((one, other) => one - other);
    for (const row of rows) for (const other of rows) if (row < other) columns[row]!.add(other);
  }
  return { size, rowOf, ...entriesOf(columns, rowOf, from, to) };
}

const sorted = (one: number, other: number): [number, number] => (one < other ? [one, other] : [other, one]);

function entriesOf(
  columns: readonly ReadonlySet<number>[],
  rowOf: Int32Array,
  from: readonly number[],
  to: readonly number[],
): Omit<Elimination, 'size' | 'rowOf'> {
  const starts = new Int32Array(columns.length + 1);
  const rows: number[] = [];
  const entries = columns.map((below, column) => {
    const places = new Map<number, number>();
    for (const row of [...below].sort((one, other) => one - other)) {
      places.set(row, rows.length);
      rows.push(row);
    }
    starts[column + 1] = rows.length;
    return places;
  });
  const changes: number[] = [];
  for (let column = 0; column < columns.length; column++) {
    for (let first = starts[column]!; first < starts[column + 1]!; first++) {
      changes.push(-1);
      for (let second = first + 1; second < starts[column + 1]!; second++) {
        changes.push(entries[rows[first]!]!.get(rows[second]!)!);
      }
    }
  }
  const entryOf = Int32Array.from(from, (start, line) => {
    const [low, high] = sorted(rowOf[start]!, rowOf[to[line]!]!);
    return low === high ? -1 : entries[low]!.get(high)!;
  });
  return { entryOf, entryCount: rows.length, starts, rows: Int32Array.from(rows), changes: Int32Array.from(changes) };
}
