import { describe, expect, it } from 'vitest';
import { checkText, projectOf } from '../../../../language/src/testing/check-text.js';
import { type FileHost, Project } from '../../../../language/src/workspace/project.js';
import { textRules } from './index.js';

/** A folder like a real one: its own name can be resolved and not be read. */
const folder = (text: string): FileHost => ({
  resolve: (_, path) => path,
  read: (file) => (file === 'test.pair' ? { text } : { problem: 'it is a folder' }),
});

describe('an import that is there and cannot be read', () => {
  it('is reported at its path, with the cause', () => {
    const rule = textRules.find(({ id }) => id === 'import-unreadable');
    const project = new Project(folder(rule?.explanation.bad ?? ''));
    project.add('test.pair');
    const findings = project.check().findings;
    expect(findings.map((finding) => [finding.rule, finding.severity])).toEqual([['import-unreadable', 'error']]);
    expect(findings[0]?.message).toContain('it is a folder');
  });
});

describe('areas', () => {
  const rule = textRules.find(({ id }) => id === 'area-contradicted');
  const told = (text: string) => checkText(text, ['area-contradicted']).map(({ message }) => message);

  it('are told once for a node, however often it is landed, and only where two are named', () => {
    const bad = rule?.explanation.bad ?? '';
    expect(told(bad)).toEqual([
      'head.field2 is under area Back office here, and head.field1 under Plant room; head hangs in one of them: write both landings under that one',
    ]);
    expect(told(bad.replace('    area "Back office"\n', ''))).toEqual([]);
    expect(told(bad.replace('area "Back office"', 'area ""'))).toEqual([]);
  });
});

describe('one cause gives one finding', () => {
  it('tells once of a catalogue that nobody uses, and of each entry where others are used', () => {
    const catalogue = 'device Old { }\ndevice Older { }\ncable Oldest { }\n';
    const unused = (text: string) =>
      projectOf({ 'catalogue.pair': catalogue, 'store.pair': `${text}store northgate { node a : Old }\n` })
        .check()
        .findings.filter(({ rule }) => rule === 'unused-entry')
        .map(({ message, at }) => `${at}: ${message.split(';')[0]}`);
    expect(unused('')).toEqual(['Old: no store that was checked uses any of the 3 entries of this file']);
    expect(unused('import "catalogue.pair"\n')).toEqual([
      'Older: no store that was checked uses device Older',
      'Oldest: no store that was checked uses cable Oldest',
    ]);
  });

  it('does not call names unknown that a missing import may declare', () => {
    const text = 'import "absent.pair"\nstore northgate {\n  node compressor1 : DriveBoard\n}\n';
    expect(checkText(text).map(({ rule }) => rule)).toEqual(['import-missing']);
  });

  it('names an undeclared node once, however often it is landed', () => {
    const text = `device DriveBoard {
  port field : rs485
}
store northgate {
  bus chillers : modbus-rtu {
    from compressor1 : DriveBoard
    38 ft to compressor2
    from compressor2
    12 ft to compressor3 : DriveBoard
  }
}
`;
    expect(checkText(text, ['unknown-name', 'not-on-bus'])).toHaveLength(1);
  });
});
