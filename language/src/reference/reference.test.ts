/** The reference tells of all that the grammar has, and its examples are taken as they stand. */
import { readFileSync } from 'node:fs';
import { EmptyFileSystem, GrammarAST, URI } from 'langium';
import { createLangiumGrammarServices } from 'langium/grammar';
import { expect, test } from 'vitest';
import { exampleFile, exampleProject, exampleRules } from '../../../test/testing/reference-example.js';
import { forms } from '../generated/forms.js';
import { keywords } from '../read/scanner.js';
import { type Entry, entries } from './index.js';
import { anchorOf, referenceParts } from './page.js';

const read = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');
const page = read('../../README.md');

async function grammarRules(): Promise<GrammarAST.ParserRule[]> {
  const { shared } = createLangiumGrammarServices(EmptyFileSystem);
  const document = shared.workspace.LangiumDocumentFactory.fromString<GrammarAST.Grammar>(
    read('../fieldpair.langium'),
    URI.parse('memory:/fieldpair.langium'),
  );
  await shared.workspace.DocumentBuilder.build([document]);
  return document.parseResult.value.rules.filter((rule) => rule.$type === 'ParserRule');
}

/** Names and values, which the reference tells in chapters of its own, and what is a whole file. */
const inChapters = ['Sheet', 'Name', 'RoleName', 'Word', 'Text', 'Quantity', 'Unit', 'Integer', 'Format'];
const writtenOut = ['Terminal', 'BiasResistors', 'LandingReference', 'NetworkMember', 'ConductorColour'];

test('each statement of the grammar has an entry', async () => {
  const isChoice = ({ definition }: GrammarAST.ParserRule) =>
    GrammarAST.isAlternatives(definition) && definition.elements.every(GrammarAST.isRuleCall);
  const statements = (await grammarRules()).filter(
    (rule) => !isChoice(rule) && ![...inChapters, ...writtenOut].includes(rule.name),
  );
  expect(statements.length).toBeGreaterThan(50);
  const told = new Set<string>(entries.map(({ name }) => name));
  expect(statements.map(({ name }) => name).filter((name) => !told.has(name))).toEqual([]);
});

test('each keyword of the grammar is in the list of keywords, with an entry whose form has it', () => {
  const list = referenceParts().get('keywords') ?? '';
  const missing = [...keywords].filter(
    (keyword) =>
      !list.includes(`| \`${keyword}\` |`) || !entries.some(({ form }) => form.split(/\W+/).includes(keyword)),
  );
  expect(missing).toEqual([]);
});

test.each(entries.map((entry) => [`${entry.scope}: ${entry.title}`, entry] as const))(
  '%s tells of each word in capitals of its form',
  (_, { name, topic }) => {
    expect(Object.keys(topic.values ?? {})).toEqual([...forms[name].values]);
  },
);

const told = (text: string) =>
  exampleProject(text)
    .check()
    .findings.filter(({ place }) => place.file === 'example.pair');

/** What the language itself says of lines: names, words, units, values. Whether the wiring is sound is not the matter. */
const complaints = (text: string) =>
  told(text)
    .filter(({ rule }) => exampleRules.has(rule))
    .map(({ rule, message }) => `${rule}: ${message}`);

test.each(entries.map((entry) => [`${entry.scope}: ${entry.title}`, entry] as const))(
  'the example of %s is taken as it stands',
  (_, entry) => {
    expect(complaints(exampleFile(entry).text)).toEqual([]);
    for (const line of entry.topic.example.split('\n')) expect(line).not.toMatch(/^\s*$/);
  },
);

test('an example that is wrong would be told', () => {
  const [entry] = entries.filter(({ name }) => name === 'Terminate');
  const broken = ['38 ft to nobody', '38 to case1 : CaseBoard', '38 ft to case1 : CaseBoard terminate'];
  for (const lines of broken) expect(complaints(exampleFile(entry as Entry, lines).text)).toHaveLength(1);
});

/** The fences of the page with what stands behind `pair` and whether they are between marks. */
function fences(text: string): { readonly info: string; readonly body: string }[] {
  return [...text.matchAll(/^```pair *(.*)\n([\s\S]*?)^```$/gm)].map(([, info = '', body = '']) => ({ info, body }));
}
const prose = page.replace(/<!-- (\w+) -->[\s\S]*?<!-- end of \1 -->/g, '');

test('whole files in the prose of the page have no findings, and lines of a bus are taken', () => {
  const found = fences(prose);
  expect(found.filter(({ info }) => info === '').length).toBeGreaterThan(0);
  expect(found.filter(({ info }) => info === 'bus').length).toBeGreaterThan(3);
  const bus = entries.find(({ name }) => name === 'From') as Entry;
  for (const { info, body } of found) {
    const text = info === 'bus' ? exampleFile(bus, body).text : body;
    if (info === 'wrong') expect(complaints(text), body).not.toEqual([]);
    else if (info === 'bus') expect(complaints(text), body).toEqual([]);
    else {
      expect(
        told(text).map(({ rule, message }) => `${rule}: ${message}`),
        body,
      ).toEqual([]);
    }
  }
});

test.each(['README.md', 'extension/README.md'])('the examples of %s have no findings', (path) => {
  const found = fences(read(`../../../${path}`));
  expect(found.length).toBeGreaterThan(0);
  for (const { body } of found) expect(told(body).map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
});

test('the page has each part, and each link within it leads to a heading', () => {
  for (const [name, text] of referenceParts())
    expect(page).toContain(`<!-- ${name} -->\n${text}<!-- end of ${name} -->`);
  const headings = new Set([...page.matchAll(/^#+ (.*)$/gm)].map(([, title = '']) => anchorOf(title)));
  const titles = [...page.matchAll(/^#+ (.*)$/gm)].map(([, title]) => title);
  expect(new Set(titles).size).toBe(titles.length);
  const links = [...page.matchAll(/\]\(#([^)]*)\)/g)].map(([, anchor = '']) => anchor);
  expect(links.length).toBeGreaterThan(50);
  expect(links.filter((anchor) => !headings.has(anchor))).toEqual([]);
});
