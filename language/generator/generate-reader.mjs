/**
 * Derives `src/generated/reader.ts` from the grammar: the types of the plain tree, and a recursive-descent reader
 * that builds it. The reader knows no recovery: on anything that it does not expect it gives up, and the caller
 * lets Langium read the text.
 */
import { createLookahead, decide, tokenOf } from './lookahead.mjs';

export function generateReader(grammar) {
  const rules = grammar.rules.filter((rule) => rule.$type === 'ParserRule');
  const lookahead = createLookahead(rules);
  const keywords = new Set();
  const visit = (element) => {
    if (element.$type === 'Keyword') keywords.add(element.value);
    for (const child of element.elements ?? (element.terminal ? [element.terminal] : [])) visit(child);
  };
  for (const rule of rules) visit(rule.definition);
  const terminals = grammar.rules
    .filter((rule) => rule.$type === 'TerminalRule' && !rule.hidden)
    .map((rule) => rule.name);
  const tokens = ['EOF', ...terminals, ...[...keywords].sort().map((keyword) => `'${keyword}'`)];
  const numberOf = new Map(tokens.map((token, index) => [token, index]));
  const id = (token) => `${numberOf.get(token)} /* ${token === 'EOF' ? 'end' : token.replaceAll('*/', '* /')} */`;

  // Many tokens are told by one look into a table: long chains of comparisons are slow to read and slow to compile.
  const tables = new Map();
  const isOneOf = (where, wanted) => {
    if (wanted.length <= 3) return wanted.map((token) => `tokenKinds[${where}] === ${id(token)}`).join(' || ');
    const numbers = wanted.map((token) => numberOf.get(token)).sort((left, right) => left - right);
    const key = numbers.join(', ');
    if (!tables.has(key)) tables.set(key, `set${tables.size + 1}`);
    return `${tables.get(key)}[tokenKinds[${where}]!] === 1`;
  };
  const test = ({ one, two }) =>
    [
      ...(one.length ? [isOneOf('position', one)] : []),
      ...[...two].map(
        ([head, nexts]) => `(tokenKinds[position] === ${id(head)} && (${isOneOf('position + 1', nexts)}))`,
      ),
    ].join(' || ');

  const isDispatch = (rule) =>
    rule.definition.$type === 'Alternatives' &&
    rule.definition.elements.every((element) => element.$type === 'RuleCall' && !element.cardinality);

  // --- Types ---------------------------------------------------------------------------------------------------
  const typeOf = (element) => {
    if (element.$type === 'Keyword') return [`'${element.value}'`];
    if (element.$type === 'Alternatives') return element.elements.flatMap(typeOf);
    const rule = element.rule.ref;
    return [rule.$type === 'ParserRule' ? rule.name : (rule.type?.name ?? 'string')];
  };
  const propertiesOf = (rule) => {
    const found = new Map();
    const walk = (element) => {
      if (element.$type === 'Assignment') {
        const known = found.get(element.feature);
        const types = new Set([
          ...(known?.types ?? []),
          ...(element.operator === '?=' ? ['boolean'] : typeOf(element.terminal)),
        ]);
        found.set(element.feature, { operator: element.operator, types });
      } else for (const one of element.elements ?? []) walk(one);
    };
    walk(rule.definition);
    return found;
  };
  const interfaceOf = (rule) => {
    if (isDispatch(rule))
      return `export type ${rule.name} = ${rule.definition.elements.map((call) => call.rule.ref.name).join(' | ')};\n`;
    // Langium's recovery can leave out any part, so that no value is sure to be there.
    const lines = [...propertiesOf(rule)].map(([name, { operator, types }]) => {
      const type = [...types].join(' | ');
      if (operator === '+=') return `  readonly ${name}: readonly ${types.size > 1 ? `(${type})` : type}[];`;
      return `  readonly ${name}: ${type}${operator === '?=' ? '' : ' | undefined'};`;
    });
    return `export interface ${rule.name} {\n  readonly type: '${rule.name}';\n  readonly start: number;\n  readonly end: number;\n${lines.join('\n')}\n}\n`;
  };

  // --- Reader --------------------------------------------------------------------------------------------------
  // Steps over a token where it is the one that is due, which may have been told before. Written out, since a call for each
  // token is slow until V8 has optimised the code around it.
  const skip = (token, told) => `${told ? '' : `if (tokenKinds[position] !== ${id(token)}) stop(); `}position++;`;
  const assign = ({ feature, operator }, element, told) => {
    const set = (value) => (operator === '+=' ? `${feature} = added(${feature}, ${value});` : `${feature} = ${value};`);
    if (element.$type === 'Keyword') {
      return `${skip(tokenOf(element), told)} ${set(operator === '?=' ? 'true' : `'${element.value}'`)}`;
    }
    const rule = element.rule.ref;
    if (rule.$type === 'ParserRule') return set(`read${rule.name}()`);
    const value = rule.name === 'NUMBER' ? 'decimal()' : rule.name === 'STRING' ? 'quoted()' : 'word()';
    return `${skip(rule.name, told)} ${set(value)}`;
  };

  /** @param told whether it is known that the next token begins this element */
  const emit = (element, after, where, told = false) => {
    const { cardinality } = element;
    if (!cardinality) return emitOnce(element, after, where, told);
    const loops = cardinality !== '?';
    const behind = loops ? lookahead.union(after, lookahead.join(lookahead.once(element), after)) : after;
    const enter = test(decide(lookahead.join(lookahead.once(element), behind), after, where, true));
    if (cardinality === '+') return `do { ${emitOnce(element, behind, where, false)} } while (${enter});`;
    return `${loops ? 'while' : 'if'} (${enter}) { ${emitOnce(element, behind, where, true)} }`;
  };
  const emitOnce = (element, after, where, told) => {
    switch (element.$type) {
      case 'Keyword':
        return skip(tokenOf(element), told);
      case 'Assignment':
        if (element.terminal.$type !== 'Alternatives') return assign(element, element.terminal, told);
        return choose(element.terminal.elements, after, where, (one) => assign(element, one, true));
      case 'Alternatives':
        return choose(element.elements, after, where, (one) => emit(one, after, where, true));
      case 'Group':
        return element.elements
          .map((one, index) => {
            const rest = element.elements
              .slice(index + 1)
              .map(lookahead.of)
              .reduce(lookahead.join, new Set(['']));
            return emit(one, lookahead.join(rest, after), where, told && index === 0);
          })
          .join('\n');
      default:
        throw new Error(`${where}: ${element.$type} is not supported by the reader; write the grammar without it.`);
    }
  };
  const choose = (elements, after, where, body) => {
    const words = elements.map((one) => lookahead.join(lookahead.of(one), after));
    return (
      elements
        .map((one, index) => {
          const others = lookahead.union(...words.filter((_, other) => other !== index));
          return `if (${test(decide(words[index], others, where))}) { ${body(one)} }`;
        })
        .join(' else ') + ' else { stop(); }'
    );
  };
  const functionOf = (rule) => {
    const after = lookahead.followOf(rule);
    if (isDispatch(rule)) {
      const body = choose(rule.definition.elements, after, rule.name, (call) => `return read${call.rule.ref.name}();`);
      return `function read${rule.name}(): ${rule.name} { ${body} return stop(); }\n`;
    }
    const properties = [...propertiesOf(rule)];
    const declare = properties.map(([name, { operator, types }]) => {
      const type = [...types].join(' | ');
      if (operator === '+=') return `let ${name}: readonly (${type})[] = none;`;
      return operator === '?=' ? `let ${name} = false;` : `let ${name}: ${type} | undefined;`;
    });
    // A text may hold no token, any other node has one.
    const end = rule.entry ? 'position === 0 ? 0 : tokenEnds[position - 1]!' : 'tokenEnds[position - 1]!';
    return `function read${rule.name}(): ${rule.name} {
  const start = tokenStarts[position]!;
  ${declare.join('\n  ')}
  ${emit(rule.definition, after, rule.name)}
  return { type: '${rule.name}', start, end: ${end}, ${properties.map(([name]) => name).join(', ')} };
}\n`;
  };

  const functions = rules.map(functionOf).join('\n');
  const sets = [...tables].map(([numbers, name]) => `const ${name} = setOf(${numbers});`).join('\n');
  return `// Generated from fieldpair.langium by \`npm run generate\`; do not edit.
import { added, none } from '../short-list.js';
import { decimalAt, unquote } from '../read/text-value.js';
import type { Tokens } from '../read/scanner.js';

/** Token numbers, in the order of the generated tests. */
export const tokenNumbers: ReadonlyMap<string, number> = new Map(${JSON.stringify(tokens)}.map((token, index) => [token, index]));

${rules.map(interfaceOf).join('\n')}
/** A text that the reader does not read; whoever asked lets Langium read it. */
class NotRead extends Error {}
const notRead = new NotRead();

const nothing: Tokens = { kinds: new Int32Array(2), starts: new Int32Array(2), ends: new Int32Array(2), count: 0 };
let source = '';
let { kinds: tokenKinds, starts: tokenStarts, ends: tokenEnds } = nothing;
let position = 0;

/** Which token numbers are in a set. */
const setOf = (...numbers: readonly number[]) => {
  const set = new Uint8Array(${tokens.length});
  for (const number of numbers) set[number] = 1;
  return set;
};
${sets}

function stop(): never {
  throw notRead;
}

/** The last word of each length: texts repeat few words, and one text for all of them is cut out and hashed once. */
const lastWords = new Array<string>(32).fill('');
/** The word that was stepped over. */
function word(): string {
  const start = tokenStarts[position - 1]!;
  const length = tokenEnds[position - 1]! - start;
  const last = lastWords[length % lastWords.length]!;
  if (last.length === length && source.startsWith(last, start)) return last;
  const text = source.slice(start, start + length);
  lastWords[length % lastWords.length] = text;
  return text;
}
function quoted(): string {
  return unquote(word());
}
function decimal(): number {
  return decimalAt(source, tokenStarts[position - 1]!, tokenEnds[position - 1]!);
}

/** By its number, the token at which the text that was read last could not be read on. */
export const stoppedAt = (): number => position;

/** Reads a whole text whose tokens were scanned, or gives undefined where anything in it is unexpected. */
export function readSheetTree(text: string, tokens: Tokens): Sheet | undefined {
  source = text;
  ({ kinds: tokenKinds, starts: tokenStarts, ends: tokenEnds } = tokens);
  position = 0;
  try {
    const sheet = readSheet();
    return tokenKinds[position] === 0 ? sheet : undefined;
  } catch (error) {
    if (error === notRead) return undefined;
    throw error;
  } finally {
    source = '';
    lastWords.fill('');
    ({ kinds: tokenKinds, starts: tokenStarts, ends: tokenEnds } = nothing);
  }
}

${functions}`;
}
