import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { endsRules } from '../ends/index.js';
import { exampleOf } from './example.js';
import { shapeRules } from './index.js';

const own = [...shapeRules, ...endsRules].map(({ id }) => id);
const idsOf = (text: string) => checkText(text, own).map(({ rule, at }) => `${rule} ${at}`);

/** Three arms of 10, 20 and 30 ft from the head, the last two of them with a terminator. */
const star = exampleOf([
  'from head : SiteHead terminate switch',
  '10 ft to case1 : CaseBoard address 1',
  'tap 3 ft to probe1 : AirProbe address 4',
  'from head',
  '20 ft to case2 : CaseBoard address 2 terminate switch',
  'from head',
  '30 ft to case3 : CaseBoard address 3 terminate switch',
]);

describe('branching', () => {
  it('is one finding for a star, and the rules about ends keep silent', () => {
    expect(idsOf(star)).toEqual(['branching head']);
    expect(checkText(star, own)[0]?.message).toMatch(/^3 trunk cables meet at head; .*\(1 too many here\)$/);
  });

  it('is a warning where no read document forbids it', () => {
    const severity = (kind: 'modbus-rtu' | 'bacnet-mstp') =>
      checkText(
        exampleOf(
          [
            'from head : SiteHead',
            '1 ft to a : CaseBoard',
            'from head',
            '1 ft to b : CaseBoard',
            'from head',
            '1 ft to c : CaseBoard',
          ],
          kind,
        ),
        ['branching'],
      )[0]?.severity;
    expect(severity('modbus-rtu')).toBe('error');
    expect(severity('bacnet-mstp')).toBe('warning');
  });

  it('straightens a star with the least cable, keeps its tap and moves its terminators', () => {
    // By hand: the longest way (20 + 30 ft) once and the 10 ft arm twice make 70 ft in place of 60 ft.
    const [finding] = checkText(star, ['branching']);
    expect(finding?.fixes()[0]?.title).toContain('about 10 ft more cable (1 new run is not measured');
    const mended = fixText(star, finding!);
    expect(idsOf(mended)).toEqual([]);
    expect(mended).toContain(
      [
        'from case2 : CaseBoard address 2 terminate switch',
        '    20 ft to head : SiteHead',
        '    10 ft to case1 : CaseBoard address 1',
        '    tap 3 ft to probe1 : AirProbe address 4',
        '    40 ft to case3 : CaseBoard address 3 terminate switch',
      ].join('\n'),
    );
  });

  it('offers no straightening where cable is loose or apart', () => {
    const loose = star.replace('from head\n', 'from head\n    5 ft\n    from head\n');
    const finding = checkText(loose, ['branching'])[0];
    expect(finding?.fixes()).toEqual([]);
  });

  it('says nothing of a ring that is passed twice, nor of taps', () => {
    const ring = exampleOf([
      'from head : SiteHead',
      '10 ft to a : CaseBoard address 1',
      '10 ft to b : CaseBoard address 2',
      '10 ft to c : CaseBoard address 3',
      '10 ft to a',
      '10 ft to d : CaseBoard address 4',
    ]);
    expect(idsOf(ring)).toEqual(['landed-twice a']);
    const taps = exampleOf([
      'from head : SiteHead',
      'tap 1 ft to a : CaseBoard',
      'tap 1 ft to b : CaseBoard',
      '3 ft to c : CaseBoard',
    ]);
    expect(checkText(taps, ['branching'])).toEqual([]);
  });
});
