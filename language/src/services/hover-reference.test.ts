/** Hovers on the words of statements tell what the language reference tells. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { exampleFile, exampleProject } from '../../../test/testing/reference-example.js';
import { entries } from '../reference/index.js';
import { Desk } from './desk.js';
import { hover } from './hover.js';
import { openReferenceCommand } from './hover-reference.js';

/** What is shown where `needle` stands, `into` it. */
function shown(text: string, needle: string, into = 0, links = false): string {
  const at = text.indexOf(needle);
  if (at < 0) throw new Error(`the text has no ${needle}`);
  const desk = new Desk(exampleProject(text));
  desk.commandLinks = links;
  const lines = text.slice(0, at + into).split('\n');
  const found = hover(desk, 'example.pair', { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 });
  return (found?.contents as { value: string } | undefined)?.value ?? '';
}

it.each(
  entries.filter(({ name }) => name !== 'Landing').map((entry) => [`${entry.scope}: ${entry.title}`, entry] as const),
)('tells of %s on its keyword', (_, entry) => {
  const { text } = exampleFile(entry);
  const keyword = entry.keywords[0] ?? '';
  const into = new RegExp(`\\b${keyword}\\b`).exec(entry.topic.example)?.index ?? -1;
  expect(shown(text, entry.topic.example, into)).toContain(entry.topic.meaning);
});

const bus = `store northgate {
  // the bus of the cases
  bus cases : modbus-rtu 19200 on Cable {
    from head : Head terminate switch
    area "Dairy wall"
    38 ft built 40 ft to case1 : Board // address
    tap 2 ft to case2 : Board
    shield earthed at head through 470 kohm
    network
  }
}
`;

it('shows how a statement is written, on its values too', () => {
  expect(shown(bus, '40 ft')).toContain('```pair\nbuilt LENGTH\n```');
  expect(shown(bus, '470')).toContain('shield earthed at NODE[.PORT]');
});

it('shows what a kind of bus is', () => {
  expect(shown(bus, 'modbus-rtu')).toMatch(/^`modbus-rtu`: Modbus RTU on RS-485\n\n```pair\nbus NAME/);
});

it('shows a run and an area with what is known of the very one', () => {
  expect(shown(bus, '38 ft')).not.toContain('LANDING');
  expect(shown(bus, 'tap')).toMatch(/2 ft[\s\S]*\[tap\] LENGTH/);
  expect(shown(bus, 'area')).toMatch(/Dairy wall[\s\S]*area NAME/);
});

it('says nothing of comments, blanks, texts and stretches that are no statement', () => {
  for (const needle of ['the bus of', '// address', '  // the', '}\n}']) expect(shown(bus, needle)).toBe('');
});

it('leads to the page where the editor follows links to commands', () => {
  expect(shown(bus, 'earthed', 0, true)).toContain(`(command:${openReferenceCommand}?%5B%22shield-earthed-at%22%5D)`);
  expect(shown(bus, 'earthed')).not.toContain('command:');
});

it('names the command that the extension has', () => {
  const manifest = readFileSync(new URL('../../../extension/package.json', import.meta.url), 'utf8');
  expect(manifest).toContain(`"command": "${openReferenceCommand}"`);
});
