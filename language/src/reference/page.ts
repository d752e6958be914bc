/** What of the language reference follows from the grammar, the topics and the engine, as Markdown. */
import {
  type BusKind,
  busKinds,
  type Dimension,
  ethernetRates,
  inSi,
  units,
  unitsOf,
  usualRates,
} from '@fieldpair/shared';
import { type Entry, entries, type Scope } from './index.js';
import { kindTopics } from './kind-topics.js';
import { type Measure, measureText, type Value } from './topic.js';

/** The parts of the reference that stand between marks, by the names of the marks. */
export function referenceParts(): ReadonlyMap<string, string> {
  const scopes = [...new Set(entries.map(({ scope }) => scope))];
  return new Map([
    ...scopes.map((scope) => [scope, scopeText(scope)] as const),
    ['kinds', kindsTable()],
    ['units', unitsTable()],
    ['keywords', keywordsTable()],
  ]);
}

/** What a hover shows of a statement. */
export const entryText = (entry: Entry): string => `${fenced('pair', entry.form)}\n\n${saidOf(entry)}`;

const fenced = (language: string, text: string) => `\`\`\`${language}\n${text}\n\`\`\``;

function saidOf({ topic }: Entry): string {
  return [
    topic.meaning,
    ...(topic.values ? [valuesText(topic.values)] : []),
    ...(topic.unsaid === undefined ? [] : [`Left out: ${lowered(topic.unsaid)}`]),
  ].join('\n\n');
}

const valuesText = (values: Readonly<Record<string, Value>>): string =>
  Object.entries(values)
    .map(([name, value]) => `- \`${name}\`: ${valueText(value)}`)
    .join('\n');

function valueText({ what, measures, words }: Value): string {
  const units =
    measures && (measures.length === 1 ? measures.map(measureText) : [measures.map(namedMeasure).join(', or ')]);
  const known = words && [`known are ${words.map((word) => `\`${word}\``).join(', ')}`];
  return [what, ...(units ?? []), ...(known ?? [])].join('; ');
}

const namedMeasure = (measure: Measure) =>
  `${anArticle(measure.dimension)} ${measure.dimension} ${measureText(measure)}`;
const anArticle = (word: string) => (/^[aeiou]/.test(word) ? 'an' : 'a');

const lowered = (sentence: string) => sentence[0]?.toLowerCase() + sentence.slice(1);

function scopeText(scope: Scope): string {
  return entries
    .filter((entry) => entry.scope === scope && !isTold(entry))
    .map((entry) => [
      `### ${entry.title}`,
      fenced('text', entry.form),
      saidOf(entry),
      fenced('pair', entry.topic.example),
    ])
    .map((blocks) => `${blocks.join('\n\n')}\n`)
    .join('\n');
}

/** Whether an entry of an earlier scope has the same topic. */
const isTold = (entry: Entry) => entries.find(({ topic }) => topic === entry.topic) !== entry;

/** As GitHub and the editor's preview name headings. */
export const anchorOf = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\w -]/g, '')
    .replaceAll(' ', '-');

const tableOf = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |\n`).join('');

function kindsTable(): string {
  const row = (kind: BusKind) => {
    const rates = kind === 'ethernet' ? ethernetRates : usualRates(kind).toReversed();
    return [`\`${kind}\``, kindTopics[kind], rates.map(rateText).join(', ') || 'none is written'];
  };
  return tableOf(['kind', 'what it is', 'usual rates'], busKinds.map(row));
}

/** As it is written. */
const rateText = (rate: number) =>
  rate < 1e6 ? String(Number(rate.toFixed(1))) : `${Number((rate / 1e6).toFixed(3))} Mbit/s`;

function unitsTable(): string {
  const dimensions = [...new Set([...units.values()].map(({ dimension }) => dimension))];
  const sizes = (dimension: Dimension) =>
    unitsOf(dimension).map((name) => {
      const definition = units.get(name);
      const size = definition ? Number(inSi(1, definition).toPrecision(6)) : 0;
      return definition?.offset === undefined && dimension in siUnits && size !== 1
        ? `\`${name}\` (${size} ${siUnits[dimension]})`
        : `\`${name}\``;
    });
  return tableOf(
    ['measures', 'units'],
    dimensions.map((dimension) => [dimension, sizes(dimension).join(', ')]),
  );
}

/** Where the size of a unit is worth telling. */
const siUnits: Readonly<Partial<Record<Dimension, string>>> = {
  length: 'm',
  'resistance per length': 'ohm/m',
  'capacitance per length': 'F/m',
};

function keywordsTable(): string {
  const places = new Map<string, Map<string, string>>();
  for (const entry of entries) {
    if (isTold(entry)) continue;
    for (const keyword of entry.keywords) {
      const known = places.get(keyword) ?? new Map<string, string>();
      places.set(keyword, known.set(entry.title, `[${entry.title}](#${anchorOf(entry.title)})`));
    }
  }
  const rows = [...places].sort(([left], [right]) => (left < right ? -1 : 1));
  return tableOf(
    ['keyword', 'stands in'],
    rows.map(([keyword, links]) => [`\`${keyword}\``, [...links.values()].join(', ')]),
  );
}
