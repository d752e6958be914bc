/**
 * Sparse symmetric elimination: a matrix whose pattern is known is factored into L D L' in linear time when the order
 * of elimination is good, solved, and inverted just where its pattern has entries (Takahashi's equations).
 *
 * Algorithms: T. A. Davis, Direct Methods for Sparse Linear Systems (2006), chapters 3 and 4, for the elimination tree
 * and the row by row factor; K. Takahashi, J. Fagan, M. Chin (1973) for the selected inverse.
 */

/** The pattern of a symmetric matrix and of its factor. Rows are numbered in the order of elimination. */
export interface Pattern {
  readonly size: number;
  /** Entries left of the diagonal: those of `row` are at `rowStarts[row]` up to `rowStarts[row + 1]`. */
  readonly rowStarts: Int32Array;
  readonly columns: Int32Array;
  /** Where each entry's value stands in the list of values; several entries of one place add up. */
  readonly sources: Int32Array;
  /** The elimination tree: the first row below the diagonal of a column of the factor, or -1. */
  readonly parents: Int32Array;
  /** Entries of the factor below the diagonal: those of `column` are at `columnStarts[column]` up to the next. */
  readonly columnStarts: Int32Array;
}

/** Finds the elimination tree and the room that each column of the factor needs. */
export function patternOf(size: number, rowStarts: Int32Array, columns: Int32Array, sources: Int32Array): Pattern {
  const parents = new Int32Array(size).fill(-1);
  const visited = new Int32Array(size).fill(-1);
  const columnStarts = new Int32Array(size + 1);
  for (let row = 0; row < size; row++) {
    visited[row] = row;
    for (let entry = rowStarts[row]!; entry < rowStarts[row + 1]!; entry++) {
      for (let column = columns[entry]!; visited[column] !== row; column = parents[column]!) {
        if (parents[column] === -1) parents[column] = row;
        columnStarts[column + 1]!++;
        visited[column] = row;
      }
    }
  }
  for (let column = 0; column < size; column++) columnStarts[column + 1]! += columnStarts[column]!;
  return { size, rowStarts, columns, sources, parents, columnStarts };
}

/** A factor L D L': `rows` and `values` are L below its unit diagonal, column by column with rising rows. */
export interface Factor {
  readonly pattern: Pattern;
  readonly rows: Int32Array;
  readonly values: Float64Array;
  readonly diagonal: Float64Array;
}

/** Factors a symmetric positive definite matrix of a pattern; `diagonal` is in the order of elimination. */
export function factorOf(pattern: Pattern, entryValues: Float64Array, matrixDiagonal: Float64Array): Factor {
  const { size, rowStarts, columns, sources, parents, columnStarts } = pattern;
  const rows = new Int32Array(columnStarts[size]!);
  const values = new Float64Array(columnStarts[size]!);
  const diagonal = new Float64Array(size);
  const filled = columnStarts.slice(0, size);
  const work = new Float64Array(size);
  const visited = new Int32Array(size).fill(-1);
  const path = new Int32Array(size);
  for (let row = 0; row < size; row++) {
    visited[row] = row;
    let top = size;
    // Columns that reach this row, every one before those that depend on it.
    for (let entry = rowStarts[row]!; entry < rowStarts[row + 1]!; entry++) {
      let column = columns[entry]!;
      work[column]! += entryValues[sources[entry]!]!;
      let length = 0;
      for (; visited[column] !== row; column = parents[column]!) {
        path[length++] = column;
        visited[column] = row;
      }
      while (0 < length) path[--top] = path[--length]!;
    }
    let pivot = matrixDiagonal[row]!;
    for (; top < size; top++) {
      const column = path[top]!;
      const value = work[column]!;
      work[column] = 0;
      const end = filled[column]!;
      for (let slot = columnStarts[column]!; slot < end; slot++) work[rows[slot]!]! -= values[slot]! * value;
      const scaled = value / diagonal[column]!;
      pivot -= scaled * value;
      rows[end] = row;
      values[end] = scaled;
      filled[column] = end + 1;
    }
    diagonal[row] = pivot;
  }
  return { pattern, rows, values, diagonal };
}

/** Solves in place: `vector` is the right side and becomes the solution, in the order of elimination. */
export function solveInPlace({ pattern, rows, values, diagonal }: Factor, vector: Float64Array): void {
  const { size, columnStarts } = pattern;
  for (let column = 0; column < size; column++) {
    const value = vector[column]!;
    if (value === 0) continue;
    for (let slot = columnStarts[column]!; slot < columnStarts[column + 1]!; slot++) {
      vector[rows[slot]!]! -= values[slot]! * value;
    }
  }
  for (let column = size - 1; 0 <= column; column--) {
    let value = vector[column]! / diagonal[column]!;
    for (let slot = columnStarts[column]!; slot < columnStarts[column + 1]!; slot++) {
      value -= values[slot]! * vector[rows[slot]!]!;
    }
    vector[column] = value;
  }
}

/** The inverse where the factor has entries: on the diagonal, and below it slot by slot as in the factor. */
export interface SelectedInverse {
  readonly diagonal: Float64Array;
  readonly values: Float64Array;
}

/** Takahashi's equations from the last column back; each needs only entries that are there already. */
export function selectedInverseOf({ pattern, rows, values, diagonal }: Factor): SelectedInverse {
  const { size, columnStarts } = pattern;
  const inverse = new Float64Array(values.length);
  const inverseDiagonal = new Float64Array(size);
  const slotOf = new Int32Array(size).fill(-1);
  for (let column = size - 1; 0 <= column; column--) {
    const start = columnStarts[column]!;
    const end = columnStarts[column + 1]!;
    for (let slot = start; slot < end; slot++) slotOf[rows[slot]!] = slot;
    for (let slot = start; slot < end; slot++) {
      const row = rows[slot]!;
      const value = values[slot]!;
      inverse[slot]! -= value * inverseDiagonal[row]!;
      for (let below = columnStarts[row]!; below < columnStarts[row + 1]!; below++) {
        const target = slotOf[rows[below]!]!;
        if (target === -1) continue;
        inverse[target]! -= value * inverse[below]!;
        inverse[slot]! -= values[target]! * inverse[below]!;
      }
    }
    let sum = 1 / diagonal[column]!;
    for (let slot = start; slot < end; slot++) {
      sum -= values[slot]! * inverse[slot]!;
      slotOf[rows[slot]!] = -1;
    }
    inverseDiagonal[column] = sum;
  }
  return { diagonal: inverseDiagonal, values: inverse };
}
