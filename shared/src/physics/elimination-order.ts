/**
 * The order in which to eliminate the vertices of a graph so that few new edges arise: always one of least degree
 * (H. M. Markowitz 1957, W. F. Tinney and J. W. Walker 1967). It finds the perfect order of every tree, also of one
 * whose vertex `last` must come last.
 */
export function leastDegreeOrder(count: number, from: ArrayLike<number>, to: ArrayLike<number>, last = -1): Int32Array {
  const neighbours = Array.from({ length: count }, () => new Set<number>());
  for (let edge = 0; edge < from.length; edge++) {
    const [left, right] = [from[edge]!, to[edge]!];
    if (left === right) continue;
    neighbours[left]!.add(right);
    neighbours[right]!.add(left);
  }
  // Vertices by degree. One that changed its degree is filed anew; where it was filed before it is passed over.
  const byDegree: number[][] = [];
  const file = (vertex: number): void => {
    const degree = neighbours[vertex]!.size;
    while (byDegree.length <= degree) byDegree.push([]);
    byDegree[degree]!.push(vertex);
  };
  for (let vertex = count - 1; 0 <= vertex; vertex--) if (vertex !== last) file(vertex);
  const order = new Int32Array(count);
  const orderable = last === -1 ? count : count - 1;
  if (last !== -1) order[orderable] = last;
  const eliminated = new Uint8Array(count);
  let done = 0;
  for (let degree = 0; done < orderable; ) {
    const vertex = byDegree[degree]!.pop();
    if (vertex === undefined) {
      degree++;
      continue;
    }
    const around = neighbours[vertex]!;
    if (eliminated[vertex] || around.size !== degree) continue;
    eliminated[vertex] = 1;
    order[done++] = vertex;
    for (const neighbour of around) {
      const others = neighbours[neighbour]!;
      others.delete(vertex);
      for (const other of around) if (other !== neighbour) others.add(other);
      if (neighbour === last) continue;
      file(neighbour);
      degree = Math.min(degree, others.size);
    }
  }
  return order;
}
