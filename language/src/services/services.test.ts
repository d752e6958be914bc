/** The services on their own: what they say of a store, and that no text makes them fail. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Position, type Range, SymbolKind, type TextEdit } from 'vscode-languageserver';
import { hostOf } from '../testing/check-text.js';
import { Project } from '../workspace/project.js';
import { codeActions, fixAllKind } from './code-actions.js';
import { codeLenses } from './code-lens.js';
import { completionPlace } from './completion-place.js';
import { Desk } from './desk.js';
import { diagnosticsOf, openFindings } from './diagnostics.js';
import { figuresPage } from './figures.js';
import { areaFolds } from './folding.js';
import { formatting, rangeFormatting } from './formatting.js';
import { hover } from './hover.js';
import { inlayHints } from './inlay-hints.js';
import { links } from './links.js';
import { definition, highlights, references } from './names.js';
import { prepareRename, rename } from './rename.js';
import { symbols } from './symbols.js';

const file = 'store.pair';
const everywhere: Range = { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } };

function deskOf(text: string, others: Readonly<Record<string, string>> = {}): Desk {
  const project = new Project(hostOf({ ...others, [file]: text }));
  project.add(file);
  return new Desk(project);
}

function positionAt(text: string, offset: number): Position {
  const lines = text.slice(0, offset).split('\n');
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

/** As the protocol has it: all edits refer to the text before. */
function applied(text: string, edits: readonly TextEdit[]): string {
  const starts = [0];
  for (const { index } of text.matchAll(/\n/g)) starts.push(index + 1);
  const offset = ({ line, character }: Position) => (starts[line] ?? text.length) + character;
  const sorted = edits.toSorted((left, right) => offset(right.range.start) - offset(left.range.start));
  return sorted.reduce(
    (result, { range, newText }) => result.slice(0, offset(range.start)) + newText + result.slice(offset(range.end)),
    text,
  );
}

const chain = `cable Pair22 { conductor 22 AWG stranded twisted pairs 1 impedance 120 ohm velocity 66 % }
device Head { role head port field : rs485 { terminals + "A" - "B" } }
device Board { port field : rs485 { terminals + "A" - "B" address dial 1..99 } }
store northgate {
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head : Head terminate resistor 120 ohm
    100 ft to caseA : Board address 11
    50 ft to caseB : Board address 14 terminate resistor 120 ohm
    waive no-head because "nobody would"
  }
}
`;

describe('services', () => {
  it('fixes everything that is safe at once', () => {
    const desk = deskOf(chain);
    expect(openFindings(desk, file).map(({ rule }) => rule)).toContain('waiver-stale');
    const [action] = codeActions(desk, file, everywhere, { only: [fixAllKind] });
    const edits = action?.edit?.changes?.[file] ?? [];
    const mended = applied(chain, edits);
    expect(openFindings(deskOf(mended), file).map(({ rule }) => rule)).not.toContain('waiver-stale');
  });

  it('marks what has no effect, and leaves out what is waived', () => {
    const desk = deskOf(chain);
    const stale = diagnosticsOf(desk, openFindings(desk, file)).find(({ code }) => code === 'waiver-stale');
    expect(stale?.tags).toEqual([1]);
    const waived = deskOf(
      chain.replace(' terminate resistor 120 ohm\n    waive no-head', '\n    waive end-unterminated'),
    );
    expect(openFindings(waived, file).map(({ rule }) => rule)).not.toContain('end-unterminated');
  });

  it('holds a bus against its limits', () => {
    const { contents } = hover(deskOf(chain), file, positionAt(chain, chain.indexOf('cases') + 1)) ?? {};
    // TIA-485-A: 32 unit loads on one pair.
    expect(contents).toMatchObject({ value: expect.stringMatching(/unit loads: .*at most 32/) });
    const page = figuresPage(deskOf(chain), file, positionAt(chain, chain.indexOf('cases')));
    expect(page?.limits).toContainEqual(expect.objectContaining({ what: 'unit loads', limit: 'at most 32' }));
    const caseB = page?.rows.find(({ cells }) => cells[0] === 'caseB');
    expect(caseB?.at.range.start).toEqual(positionAt(chain, chain.indexOf('caseB')));
  });

  it('tells of a port what it brings along and what it can be set to', () => {
    const text = chain.replace(
      'device Head { role head port field : rs485 {',
      '$& bias switch 510 ohm rates 9600, 19200 edge 250 ns',
    );
    const { contents } = hover(deskOf(text), file, positionAt(text, text.indexOf('Head'))) ?? {};
    const told = expect.stringMatching(/bias 510 ohm \(switch\).*rates 9,600 bit\/s, 19,200 bit\/s; edge 250 ns/);
    expect(contents).toMatchObject({ value: told });
  });

  it('tells of an area what lies in it, and offers the areas of the store', () => {
    const text = chain.replace('    50 ft', '    area "Dairy wall"\n    50 ft');
    const { contents } = hover(deskOf(text), file, positionAt(text, text.indexOf('Dairy wall'))) ?? {};
    expect(contents).toMatchObject({ value: expect.stringMatching(/^\*\*area Dairy wall\*\*\n\n- 1 landing: caseB/) });
    expect(completionPlace('area ', 5).due.what).toBe('area');
  });

  it('tells address gaps of neighbours alone', () => {
    const labels = (text: string) => inlayHints(deskOf(text), file, everywhere).map(({ label }) => label);
    expect(labels(chain)).toContain('12 to 13 unused');
    expect(labels(chain.replace('address 14', 'address 12')).join()).not.toContain('unused');
    expect(labels(chain.replace('address 14', 'address 13'))).toContain('12 unused');
  });

  it('keeps hints out of a line that is being typed', () => {
    const typed = chain.replace('    waive', '    30 ft to caseC : Board address \n    waive');
    const line = typed.split('\n').findIndex((one) => one.includes('caseC'));
    const hints = inlayHints(deskOf(typed), file, everywhere).filter(({ position }) => position.line === line);
    expect(hints.map(({ label }) => label)).toContain('180 ft');
    // Two lines of it stop short, of which the second is not told.
    const twice = typed.replace('from head : Head terminate resistor 120 ohm', 'from head.');
    const after = inlayHints(deskOf(twice), file, everywhere).filter(({ position }) => position.line === line);
    expect(after.every(({ position }) => position.character > '    30 ft to caseC : Board'.length)).toBe(true);
    expect(new Set(hints.map(({ position }) => position.character))).toEqual(
      new Set(['    30 ft to caseC : Board address '.length]),
    );
  });

  it('gives each kind of thing its own symbol in the outline', () => {
    const text = chain.replace(
      'store northgate {\n',
      'store northgate {\n  node spare1 : Board\n  network plant { spare1 }\n',
    );
    const kinds = new Map<string, number>();
    const walk = (all: ReturnType<typeof symbols>) => {
      for (const { name, kind, children = [] } of all) {
        kinds.set(name, kind);
        walk(children);
      }
    };
    walk(symbols(deskOf(text), file));
    const things = ['Pair22', 'Head', 'northgate', 'spare1', 'plant', 'cases', 'field', 'caseB'];
    const found = things.map((thing) => kinds.get(thing));
    expect(found).not.toContain(undefined);
    expect(new Set(found).size).toBe(things.length);
    // Of these four, which the outline of the most used editor draws alike, at most one may be in use.
    const alike = [SymbolKind.Module, SymbolKind.Namespace, SymbolKind.Package, SymbolKind.Object];
    expect(found.filter((kind) => (alike as unknown[]).includes(kind))).toHaveLength(1);
  });

  describe('with areas', () => {
    const text = chain
      .replace('    from head', '    area "Plant room"\n    from head')
      .replace('    50 ft', '    area Aisle\n    50 ft')
      .replace('  }\n}', '    area ""\n    area "Plant room"\n    3 ft to last : Board\n  }\n}');

    it('puts what is under each heading below it in the outline', () => {
      const outline = symbols(deskOf(text), file).flatMap(({ children = [] }) => children);
      const bus = outline.find(({ name }) => name === 'cases');
      const areas = bus?.children?.map(({ name, children = [] }) => [name, children.map((one) => one.name)]);
      expect(areas?.map(([name]) => name)).toEqual(['Plant room', 'Aisle', 'Plant room']);
      expect(areas?.at(-1)).toEqual(['Plant room', ['last']]);
    });

    it('folds what is under each heading', () => {
      const lines = text.split('\n');
      const folds = areaFolds(deskOf(text), file);
      expect(folds.map(({ startLine }) => lines[startLine]?.trim())).toEqual([
        'area "Plant room"',
        'area Aisle',
        'area "Plant room"',
      ]);
      expect(lines[folds[0]!.endLine]).toContain('to caseA');
      expect(lines[folds.at(-1)!.endLine]).toContain('to last');
    });

    it('leads from each heading to the first of its name, and lists all', () => {
      const at = (needle: string, nth: number) => {
        const before = text.slice(0, [...text.matchAll(new RegExp(needle, 'g'))][nth]!.index + 1).split('\n');
        return { line: before.length - 1, character: before.at(-1)!.length };
      };
      const desk = deskOf(text);
      expect(definition(desk, file, at('"Plant room"', 1))?.range.start.line).toBe(at('"Plant room"', 0).line);
      expect(references(desk, file, at('"Plant room"', 0), true)).toHaveLength(2);
    });
  });

  it('formats whole files and single lines', () => {
    const crooked = chain.replace('    50 ft', '  50   ft').replace('    100 ft', '100 ft');
    expect(applied(crooked, formatting(deskOf(crooked), file))).toBe(applied(chain, formatting(deskOf(chain), file)));
    const line = crooked.split('\n').findIndex((text) => text.includes('50   ft'));
    const edits = rangeFormatting(deskOf(crooked), file, {
      start: { line, character: 0 },
      end: { line, character: 5 },
    });
    expect(edits.map(({ newText }) => newText)).toEqual([
      '    50 ft to caseB : Board address 14 terminate resistor 120 ohm',
    ]);
  });

  it.each([
    ['import "x', 'path'],
    ['import ', 'path'],
    ['store x "to ', 'prose'],
    ['from ', 'node'],
    ['38 ft to ', 'node'],
    ['38 ft to comp', 'node'],
    ['from head.', 'port'],
    ['shield earthed at ', 'landed'],
    ['38 ft on ', 'cable'],
    ['bus cases : ', 'kind'],
    ['bus cases "Cases" : ', 'kind'],
    ['to caseA : ', 'device'],
    ['speaks modbus-rtu, ', 'kind'],
    ['to caseA address ', 'address'],
    ['to caseA address 12\n 38 ', 'unit'],
    ['terminate resistor 120 ', 'unit'],
    ['to caseA address 12 ', 'nothing'],
    ['waive ', 'rule'],
    ['bus rack : can ', 'rate'],
    ['bus rack "Rack" : can 250 ', 'unit'],
    ['cable Pair { class ', 'word'],
    ['port out : supply { supplies 24 V dc class ', 'nothing'],
    ['90 m cords 10 m of ', 'cable'],
    ['// from ', 'prose'],
    ['/* from ', 'prose'],
    ['// said\n from ', 'node'],
  ])('knows what is due after %j', (text, what) => {
    expect(completionPlace(text, text.length).due.what).toBe(what);
  });

  it('never fails, wherever a text is cut off', () => {
    const samples = ['as-found/store.pair', 'small/store.pair'].map((name) => {
      return readFileSync(new URL(`../../../samples/${name}`, import.meta.url), 'utf8');
    });
    for (const text of [...samples, chain]) {
      for (let end = 0; end < text.length; end += 23) {
        const cut = text.slice(0, end);
        const desk = deskOf(cut);
        const position = positionAt(cut, Math.max(0, end - 2));
        completionPlace(cut, end);
        for (const ask of [hover, definition, highlights, prepareRename, figuresPage]) ask(desk, file, position);
        for (const ask of [symbols, links, codeLenses, formatting]) ask(desk, file);
        references(desk, file, position, true);
        rename(desk, file, position, 'other');
        inlayHints(desk, file, everywhere);
        rangeFormatting(desk, file, everywhere);
        expect(codeActions(desk, file, everywhere, {}).every(({ edit }) => edit?.changes)).toBe(true);
      }
    }
  });
});
