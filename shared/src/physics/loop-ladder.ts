/**
 * The resistance of a tree of two-wire cable as one end of it sees it: in each landing's branch a series element,
 * then whatever hangs across the pair there, then the runs that lead on.
 *
 * What any one place of the tree amounts to acts on the resistance at the root as a fraction (a z + b)/(c z + d) of
 * its own resistance z, since series and parallel connection are fractions of that form and so are all chains of them.
 * With that fraction known for every landing, the effect of one contact, cut or short costs a single division, and
 * everything together is linear in the number of landings. All terms are 0 or more, so that nothing cancels; 0 and
 * infinity are legal values everywhere.
 */

/** A tree, its root first; every landing after its parent. */
export interface LadderTree {
  readonly order: readonly number[];
  /** Per landing: its parent, or -1 for the root and for landings outside of the tree. */
  readonly parents: readonly number[];
}

/** Ohms and siemens per landing. */
export interface LadderValues {
  /** Of the run from the parent, out and back. */
  readonly run: readonly number[];
  /** In line, between the run that arrives and all else at the landing. */
  readonly series: readonly number[];
  /** Across the pair, behind the series element. */
  readonly across: readonly number[];
}

/** How the resistance at the root follows from that at a place: (a z + b)/(c z + d). */
interface Fraction {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

export class Ladder {
  /** Per landing: from in front of its series element away from the root. */
  readonly resistances: readonly number[];
  private readonly children: readonly (readonly number[])[];
  /** Per landing: all that hangs behind its parent's series element but the run to it. */
  private readonly beside: readonly number[];
  private readonly fractions: readonly Fraction[];

  constructor(
    private readonly tree: LadderTree,
    private readonly values: LadderValues,
  ) {
    const { order, parents } = tree;
    const children: number[][] = parents.map(() => []);
    for (const landing of order) if (parents[landing] !== -1) children[parents[landing]!]!.push(landing);
    this.children = children;
    this.resistances = this.sweepIn();
    this.beside = this.findBeside();
    this.fractions = this.sweepOut();
  }

  private sweepIn(): number[] {
    const { order } = this.tree;
    const { series } = this.values;
    const resistances = new Array<number>(this.tree.parents.length).fill(0);
    for (let position = order.length - 1; 0 <= position; position--) {
      const landing = order[position]!;
      const across = this.children[landing]!.reduce(
        (sum, child) => sum + 1 / (this.values.run[child]! + resistances[child]!),
        this.values.across[landing]!,
      );
      resistances[landing] = series[landing]! + 1 / across;
    }
    return resistances;
  }

  /** Sums from both sides, since a sum with an infinity in it cannot be taken back by subtraction. */
  private findBeside(): number[] {
    const beside = new Array<number>(this.tree.parents.length).fill(0);
    for (const landing of this.tree.order) {
      const children = this.children[landing]!;
      let before = this.values.across[landing]!;
      for (const child of children) {
        beside[child] = before;
        before += this.branch(child);
      }
      let after = 0;
      for (const child of children.toReversed()) {
        beside[child]! += after;
        after += this.branch(child);
      }
    }
    return beside;
  }

  private branch(child: number): number {
    return 1 / (this.values.run[child]! + this.resistances[child]!);
  }

  private sweepOut(): Fraction[] {
    const fractions = new Array<Fraction>(this.tree.parents.length);
    for (const landing of this.tree.order) {
      const parent = this.tree.parents[landing]!;
      if (parent === -1) fractions[landing] = { a: 1, b: 0, c: 0, d: 1 };
      else {
        const { run, series } = this.values;
        fractions[landing] = through(fractions[parent]!, series[parent]!, this.beside[landing]!, run[landing]!);
      }
    }
    return fractions;
  }

  /** The resistance at the root if a landing's were `resistance` in front of its series element. */
  atRoot(landing: number, resistance: number): number {
    const { a, b, c, d } = this.fractions[landing]!;
    if (resistance === Number.POSITIVE_INFINITY) return a === 0 && c === 0 ? b / d : a / c;
    return (a * resistance + b) / (c * resistance + d);
  }

  /** The resistance at the root if a landing had other elements. */
  changedAtRoot(landing: number, series: number, across: number): number {
    const rest = this.children[landing]!.reduce((sum, child) => sum + this.branch(child), across);
    return this.atRoot(landing, series + 1 / rest);
  }

  /** Per landing: the resistance across the pair in front of its series element, nothing connected to the root. */
  acrossEverywhere(): number[] {
    const { order, parents } = this.tree;
    // Of the run to the parent and everything behind it; nothing leads on from the root.
    const towards = new Array<number>(parents.length).fill(0);
    const readings = new Array<number>(parents.length).fill(Number.POSITIVE_INFINITY);
    for (const landing of order) {
      const parent = parents[landing]!;
      if (parent !== -1) {
        const back = this.beside[landing]! + 1 / (this.values.series[parent]! + 1 / towards[parent]!);
        towards[landing] = 1 / (this.values.run[landing]! + 1 / back);
      }
      readings[landing] = 1 / (towards[landing]! + 1 / this.resistances[landing]!);
    }
    return readings;
  }
}

/** The fraction of a place at the far end of a run, beside other branches and behind a series element. */
function through(parent: Fraction, series: number, beside: number, run: number): Fraction {
  if (series === Number.POSITIVE_INFINITY) return constant(parent, Number.POSITIVE_INFINITY);
  if (beside === Number.POSITIVE_INFINITY) return constant(parent, series);
  const c = beside;
  const d = 1 + beside * run;
  const a = 1 + series * c;
  const b = run + series * d;
  const product = {
    a: parent.a * a + parent.b * c,
    b: parent.a * b + parent.b * d,
    c: parent.c * a + parent.d * c,
    d: parent.c * b + parent.d * d,
  };
  // Only the proportions count; scaled, they never overflow.
  const scale = Math.max(product.a, product.b, product.c, product.d);
  return { a: product.a / scale, b: product.b / scale, c: product.c / scale, d: product.d / scale };
}

/** What is behind changes nothing: the root sees what a fixed resistance here amounts to. */
function constant({ a, b, c, d }: Fraction, resistance: number): Fraction {
  if (resistance === Number.POSITIVE_INFINITY)
    return a === 0 && c === 0 ? { a: 0, b, c: 0, d } : { a: 0, b: a, c: 0, d: c };
  return { a: 0, b: a * resistance + b, c: 0, d: c * resistance + d };
}
