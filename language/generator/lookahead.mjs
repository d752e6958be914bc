/**
 * FIRST and FOLLOW sets of two tokens, for grammar elements of Langium.
 *
 * A set holds words of up to two token names, written `a b`, `a` or the empty word; a short word means that the
 * text may end there as far as the element is concerned.
 */
const size = 2;

const join = (left, right) => {
  const words = new Set();
  for (const word of left) {
    const tokens = word === '' ? [] : word.split(' ');
    if (tokens.length >= size) words.add(word);
    else
      for (const next of right)
        words.add([...tokens, ...(next === '' ? [] : next.split(' '))].slice(0, size).join(' '));
  }
  return words;
};

const union = (...sets) => new Set(sets.flatMap((set) => [...set]));

/** Token name of a keyword or terminal as the readers know it. */
export const tokenOf = (element) => (element.$type === 'Keyword' ? `'${element.value}'` : element.rule.ref.name);

export function createLookahead(rules) {
  const first = new Map(rules.map((rule) => [rule.name, new Set()]));
  const follow = new Map(rules.map((rule) => [rule.name, new Set()]));

  const once = (element) => {
    switch (element.$type) {
      case 'Keyword':
        return new Set([tokenOf(element)]);
      case 'RuleCall':
        return element.rule.ref.$type === 'TerminalRule'
          ? new Set([tokenOf(element)])
          : first.get(element.rule.ref.name);
      case 'Assignment':
        return once(element.terminal);
      case 'Alternatives':
        return union(...element.elements.map(of));
      case 'Group':
        return element.elements.map(of).reduce(join, new Set(['']));
      default:
        throw new Error(`${element.$type} is not supported by the reader; write the grammar without it.`);
    }
  };
  const of = (element) => {
    const words = once(element);
    if (!element.cardinality) return words;
    const more = element.cardinality === '?' ? words : union(words, join(words, words));
    return element.cardinality === '+' ? more : union(more, ['']);
  };

  const settle = (step) => {
    for (let changed = true; changed; ) changed = step();
  };
  const grow = (map, name, words) => {
    const before = map.get(name).size;
    for (const word of words) map.get(name).add(word);
    return map.get(name).size !== before;
  };
  settle(() => rules.map((rule) => grow(first, rule.name, of(rule.definition))).some(Boolean));

  /** Walks an element with what may come after it, and notes it for each rule called. */
  const spread = (element, after) => {
    const behind =
      element.cardinality === '*' || element.cardinality === '+' ? union(after, join(once(element), after)) : after;
    switch (element.$type) {
      case 'RuleCall':
        return element.rule.ref.$type === 'ParserRule' && grow(follow, element.rule.ref.name, behind);
      case 'Assignment':
        return spread(element.terminal, behind);
      case 'Alternatives':
        return element.elements.map((one) => spread(one, behind)).some(Boolean);
      case 'Group':
        return element.elements
          .map((one, index) =>
            spread(
              one,
              join(
                element.elements
                  .slice(index + 1)
                  .map(of)
                  .reduce(join, new Set([''])),
                behind,
              ),
            ),
          )
          .some(Boolean);
      default:
        return false;
    }
  };
  follow.get(rules[0].name).add('EOF EOF');
  settle(() => rules.map((rule) => spread(rule.definition, follow.get(rule.name))).some(Boolean));

  return { of, once, join, union, followOf: (rule) => follow.get(rule.name) };
}

/**
 * The test that tells the words of `wanted` from those of `others` by one token where that is enough, else by two.
 * `one` lists first tokens that decide alone; `two` maps a first token to the second tokens that decide.
 * Where even two tokens leave it open, an optional part (`greedy`) is taken, as Langium's parser does; alternatives
 * that clash are refused.
 */
export function decide(wanted, others, where, greedy = false) {
  const group = (words) => {
    const map = new Map();
    for (const word of words) {
      const [head = '', next = 'EOF'] = word.split(' ');
      if (head) map.set(head, (map.get(head) ?? new Set()).add(next));
    }
    return map;
  };
  const [mine, theirs] = [group(wanted), group(others)];
  const one = [];
  const two = new Map();
  for (const [head, nexts] of mine) {
    if (!theirs.has(head)) one.push(head);
    else {
      const both = [...nexts].filter((next) => theirs.get(head).has(next));
      if (both.length && !greedy)
        throw new Error(`${where}: ${head} ${both[0]} fits two ways; two tokens must decide.`);
      two.set(head, [...nexts]);
    }
  }
  return { one, two };
}
