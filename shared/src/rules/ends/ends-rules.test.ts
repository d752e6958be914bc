/** The rules about ends, with the cases between them; the table test of all rules runs the examples of their pages. */
import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import type { BusKind } from '../../network.js';
import { exampleOf } from '../shape/example.js';
import { shapeRules } from '../shape/index.js';
import { endsRules } from './index.js';

const own = [...shapeRules, ...endsRules].map(({ id }) => id);
const idsOf = (text: string) => checkText(text, own).map(({ rule, at }) => `${rule} ${at}`);
const bus = (first: string, middle: string, last: string, kind: BusKind = 'modbus-rtu') =>
  exampleOf(
    [
      `from head : SiteHead ${first}`,
      `10 ft to a : CaseBoard address 1 ${middle}`,
      `10 ft to b : AirProbe address 2 ${last}`,
    ],
    kind,
  );
const resistor = 'terminate resistor 120 ohm';

describe('end-unterminated', () => {
  it('is one finding for each bare end, with the means that the device has', () => {
    const findings = checkText(bus('', '', ''), own);
    expect(findings.map(({ rule, at }) => `${rule} ${at}`)).toEqual(['end-unterminated head', 'end-unterminated b']);
    expect(findings.map(({ fixes }) => fixes()[0]?.title)).toEqual([
      'Switch on the terminator of head',
      'Terminate b with a 120 ohm resistor',
    ]);
  });

  it('keeps silent where the device is unknown and where the text is damaged', () => {
    expect(idsOf(bus('terminate switch', '', '').replace('b : AirProbe', 'b : Stranger'))).toEqual([]);
    expect(idsOf(exampleOf(['from head : SiteHead', '10 ft to a : CaseBoard address 1', '10 ft to']))).toEqual([]);
  });

  it('is a warning on MS/TP, whose terminators are known from memory', () => {
    expect(checkText(bus('terminate switch', '', '', 'bacnet-mstp'), own)[0]?.severity).toBe('warning');
    expect(checkText(bus('terminate switch', '', ''), own)[0]?.severity).toBe('error');
  });

  it('says nothing of a bus that is terminated once at each end, by a resistor with a capacitor too', () => {
    // 1 nF in series with 120 ohm: MODBUS over Serial Line guide V1.02, 3.4.5.
    expect(idsOf(bus('terminate switch', '', `${resistor} capacitor 1 nF`))).toEqual([]);
  });
});

describe('terminator-midline', () => {
  it('moves to the end that has none, and mends both findings', () => {
    const text = bus('terminate switch', resistor, '');
    expect(idsOf(text)).toEqual(['terminator-midline a', 'end-unterminated b']);
    const finding = checkText(text, ['terminator-midline'])[0]!;
    expect(finding.fixes().map(({ title }) => title)).toEqual([
      'Move the terminator from a to b',
      'Remove the terminator of a',
    ]);
    expect(idsOf(fixText(text, finding))).toEqual([]);
    expect(idsOf(fixText(text, checkText(text, ['end-unterminated'])[0]!))).toEqual([]);
  });

  it('is one finding for a landing on a tap, however many terminators it has', () => {
    const text = bus(
      'terminate switch',
      `\n    tap 1 ft to c : CaseBoard address 3 terminate switch ${resistor}`,
      resistor,
    );
    expect(idsOf(text)).toEqual(['terminator-midline c']);
    expect(checkText(text, own)[0]?.message).toContain('c lies on a tap');
    expect(idsOf(fixText(text, checkText(text, own)[0]!))).toEqual([]);
  });

  it('cannot take away what is fixed inside the device', () => {
    const text = bus('terminate switch', '', resistor).replace(
      'terminator switch 120 ohm\n    address',
      'terminator fixed 120 ohm\n    address',
    );
    expect(idsOf(text)).toEqual(['terminator-midline a']);
    expect(checkText(text, own)[0]?.fixes()).toEqual([]);
  });
});

describe('terminator-switch-conflict and terminator-extra', () => {
  it('tells a switch beside a resistor from two resistors', () => {
    expect(idsOf(bus(`terminate switch ${resistor}`, '', resistor))).toEqual(['terminator-switch-conflict head']);
    expect(idsOf(bus('terminate switch', '', `${resistor} ${resistor}`))).toEqual(['terminator-extra b']);
  });

  it.each([0, 1])('keeps the switch or the resistor alone (fix %i)', (fix) => {
    const text = bus(`terminate switch ${resistor}`, '', resistor);
    expect(idsOf(fixText(text, checkText(text, own)[0]!, fix))).toEqual([]);
  });
});

describe('terminator-switch-missing', () => {
  it('stands alone, and its fix lands a resistor', () => {
    const text = bus('terminate switch', '', 'terminate switch');
    expect(idsOf(text)).toEqual(['terminator-switch-missing b']);
    const mended = fixText(text, checkText(text, own)[0]!);
    expect(idsOf(mended)).toEqual([]);
    expect(mended).toContain('b : AirProbe address 2 terminate resistor 120 ohm');
  });

  it('is removed where no terminator is due', () => {
    const text = exampleOf([
      'from head : SiteHead terminate switch',
      '10 ft to a : AirProbe address 1 terminate switch',
      `10 ft to b : AirProbe address 2 ${resistor}`,
    ]);
    expect(idsOf(text)).toEqual(['terminator-switch-missing a']);
    expect(idsOf(fixText(text, checkText(text, own)[0]!))).toEqual([]);
  });
});

describe('terminator-value', () => {
  // RS-485 tutorials call 120 +-30 ohm workable; the Modbus guide V1.02, 3.4.5 names 150 ohm.
  it.each([
    [89, 1],
    [90, 0],
    [120, 0],
    [150, 0],
    [151, 1],
  ])('judges %i ohm on a cable of 120 ohm: %i findings', (resistance, count) => {
    expect(checkText(bus('terminate switch', '', `terminate resistor ${resistance} ohm`), own)).toHaveLength(count);
  });

  it('goes by the cable, and by 120 ohm where the cable states nothing', () => {
    const on = (impedance: string, resistance: number, kind: BusKind) =>
      checkText(
        bus('terminate resistor 100 ohm', '', `terminate resistor ${resistance} ohm`, kind).replace(
          '  impedance 120 ohm\n',
          impedance,
        ),
        ['terminator-value'],
      ).length;
    expect(on('  impedance 100 ohm\n', 150, 'rs485')).toBe(1);
    expect(on('  impedance 100 ohm\n', 150, 'modbus-rtu')).toBe(0);
    expect(on('', 150, 'rs485')).toBe(0);
    expect(on('', 160, 'rs485')).toBe(1);
  });

  it('says how much of the wave comes back', () => {
    // (60 - 120) / (60 + 120) = -1/3: line theory.
    const text = bus('terminate switch', '', 'terminate resistor 60 ohm');
    expect(checkText(text, own)[0]?.message).toContain('sends 33 % of the wave back');
    expect(idsOf(fixText(text, checkText(text, own)[0]!))).toEqual([]);
  });
});
