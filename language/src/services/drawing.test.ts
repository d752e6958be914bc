/** The drawing as an editor gets it, and moving in it. */
import { describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver';
import { hostOf } from '../testing/check-text.js';
import { Project } from '../workspace/project.js';
import { Desk } from './desk.js';
import { landingMove, storeDrawing } from './drawing.js';

const file = 'store.pair';
const text = `device Head { role head port field : rs485 }
device Board { port field : rs485 }
store north {
  bus cases : modbus-rtu 19200 {
    from head : Head
    30 ft to "<b>" : Board address 1
    20 ft to caseB : Board address 300
  }
}
store south {
  bus cases : modbus-rtu 19200 {
    from head : Head
  }
}
`;

function deskOf(content: string): Desk {
  const project = new Project(hostOf({ [file]: content }));
  project.add(file);
  return new Desk(project);
}

const at = (line: number, character: number) => ({ line, character });

describe('the drawing of a file', () => {
  it('tells of each part where it is written and what is wrong with it', () => {
    const drawing = storeDrawing(deskOf(text), file, undefined, { width: 800 });
    const caseB = drawing?.parts.find(({ landing }) => landing === 'caseB');
    expect(caseB?.at).toEqual({ uri: file, range: { start: at(6, 13), end: at(6, 18) } });
    expect(caseB?.covers).toEqual([{ uri: file, range: { start: at(6, 13), end: at(6, 38) } }]);
    expect(caseB?.findings.map(({ severity, at: place }) => [severity, place.range.start.line])).toContainEqual([
      'error',
      6,
    ]);
    expect(drawing?.parts.map(({ markup }) => markup).join('')).not.toContain('<b>');
  });

  it('draws what is waived, with the reason', () => {
    const waiver = 'waive address-out-of-range at caseB because "a new board is ordered"';
    const drawing = storeDrawing(
      deskOf(text.replace('address 300\n', `address 300\n${waiver}\n`)),
      file,
      undefined,
      {},
    );
    const caseB = drawing?.parts.find(({ landing }) => landing === 'caseB');
    expect(caseB?.findings.map(({ waived }) => waived)).toContain('a new board is ordered');
  });

  it('is that of the store at a position', () => {
    const titleAt = (line: number) => storeDrawing(deskOf(text), file, at(line, 0), {})?.title;
    expect([titleAt(0), titleAt(5), titleAt(11)]).toEqual(['north', 'north', 'south']);
    expect(storeDrawing(deskOf('device Board { }'), file, undefined, {})).toBeUndefined();
  });

  it('keeps the keys of parts while the text around them changes', () => {
    const keys = (content: string) => storeDrawing(deskOf(content), file, undefined, {})?.parts.map(({ key }) => key);
    expect(keys(text.replace('20 ft', '25 ft').replace('store north', '// a remark\nstore north'))?.length).toBe(
      keys(text)?.length,
    );
    expect(keys(text.replace('store north', '// a remark\nstore north'))).toEqual(keys(text));
  });
});

describe('the areas of a bus', () => {
  const walk = text.replace('    30 ft', '    area "Dairy wall"\n    30 ft');
  const partsOf = (content: string) => storeDrawing(deskOf(content), file, undefined, { width: 1120 })?.parts ?? [];

  it('are drawn below the landings that are first landed under their heading, and lead to it', () => {
    const [area, ...more] = partsOf(walk).filter(({ kind }) => kind === 'area');
    expect(more).toEqual([]);
    expect(area?.name).toBe('area Dairy wall, 2 landings');
    expect(area?.at.range).toEqual({ start: at(5, 4), end: at(5, 21) });
    expect(partsOf(walk).find(({ landing }) => landing === 'caseB')?.name).toContain('in Dairy wall');
    expect(partsOf(walk).find(({ landing }) => landing === 'head')?.name).not.toContain('in Dairy wall');
  });

  it('end where another begins, or with an empty name, and begin again where the pen comes back', () => {
    const ended = (line: string) => walk.replace('    20 ft', `    ${line}\n    20 ft`);
    const names = (content: string) =>
      partsOf(content).flatMap(({ kind, name }) => (kind === 'area' ? [name.split(',')[0]] : []));
    expect(names(ended('area meat'))).toEqual(['area Dairy wall', 'area meat']);
    expect(names(ended('area ""'))).toEqual(['area Dairy wall']);
    const back = walk.replace(
      '    20 ft',
      '    area meat\n    9 ft to c : Board address 3\n    area "Dairy wall"\n    20 ft',
    );
    expect(names(back)).toEqual(['area Dairy wall', 'area meat', 'area Dairy wall']);
  });
});

describe('moving a landing in the drawing', () => {
  it('gives edits that do not touch each other', () => {
    const { edits, remeasured, refused } = landingMove(deskOf(text), file, at(6, 15), 'caseB', 'head');
    expect({ refused, remeasured }).toEqual({ refused: undefined, remeasured: 2 });
    const changes = edits[0]?.edits as TextEdit[];
    const ends = changes.map(({ range }) => [range.start, range.end] as const);
    for (const [index, [start]] of ends.entries()) {
      const before = ends[index - 1]?.[1];
      if (before)
        expect(before.line * 1000 + before.character).toBeLessThanOrEqual(start.line * 1000 + start.character);
    }
  });

  it('says so when the text has gone on', () => {
    const { edits, refused } = landingMove(deskOf(text), file, at(6, 15), 'gone', 'head');
    expect({ edits, refused }).toEqual({ edits: [], refused: expect.stringMatching(/older than the text/) });
  });
});
