import { describe, expect, it } from 'vitest';
import { checkText } from '../../../../language/src/testing/check-text.js';
import { fixText } from '../../../../language/src/testing/fix-text.js';
import { endsRules } from '../ends/index.js';
import { exampleOf } from './example.js';
import { shapeRules } from './index.js';

const own = [...shapeRules, ...endsRules].map(({ id }) => id);
const withTaps = (taps: readonly string[], kind: 'modbus-rtu' | 'rs485' | 'bacnet-mstp' = 'modbus-rtu') =>
  exampleOf(
    [
      'from head : SiteHead terminate switch',
      '10 m to case1 : CaseBoard address 1',
      ...taps,
      '10 m to case2 : CaseBoard address 2 terminate switch',
    ],
    kind,
  );
const messagesOf = (text: string) => checkText(text, ['tap-too-long']).map(({ message }) => message);

// Limits: MODBUS over Serial Line, Specification and Implementation Guide V1.02, 3.4.3.
describe('tap-too-long', () => {
  it('allows 20 m on Modbus and no more', () => {
    expect(messagesOf(withTaps(['tap 20 m to p : AirProbe address 3']))).toEqual([]);
    expect(messagesOf(withTaps(['tap 20.5 m to p : AirProbe address 3']))[0]).toContain(
      '20 m is the most for a Modbus tap (0.5 m over)',
    );
  });

  it('allows 40 m / n for each of n taps at one landing: 10 m for four', () => {
    const four = (length: string) =>
      withTaps([1, 2, 3, 4].map((tap) => `tap ${length} to p${tap} : AirProbe address ${tap + 10}`));
    expect(messagesOf(four('10 m'))).toEqual([]);
    expect(messagesOf(four('11 m'))).toHaveLength(4);
  });

  it('counts what hangs behind a tap to it', () => {
    const text = withTaps(['tap 15 m to splice box']).replace(
      '    shield',
      '    from box\n    tap 6 m to p : AirProbe address 3\n    shield',
    );
    expect(messagesOf(text)).toHaveLength(1);
    expect(messagesOf(text)[0]).toContain('reaches 21 m');
  });

  it('advises a tenth of the edge on plain RS-485', () => {
    // 0.1 x 250 ns x 0.66 x c = 4.95 m; formula of RS-485 transceiver data sheets.
    expect(messagesOf(withTaps(['tap 4.9 m to p : AirProbe'], 'rs485'))).toEqual([]);
    expect(checkText(withTaps(['tap 5 m to p : AirProbe'], 'rs485'), ['tap-too-long'])[0]?.severity).toBe('warning');
    const unstated = withTaps(['tap 5 m to p : AirProbe'], 'rs485').replaceAll('    edge 250 ns\n', '');
    expect(messagesOf(unstated)).toEqual([]);
  });

  it('warns of every tap on MS/TP, from memory of the standard', () => {
    const [finding] = checkText(withTaps(['tap 1 m to p : AirProbe address 3'], 'bacnet-mstp'), ['tap-too-long']);
    expect(finding?.severity).toBe('warning');
  });

  it('runs the trunk through the tapped device', () => {
    const text = withTaps(['tap 30 m to p : AirProbe address 3']);
    const mended = fixText(text, checkText(text, ['tap-too-long'])[0]!);
    expect(mended).toContain('30 m to p : AirProbe address 3\n    40 m to case2');
    expect(checkText(mended, own)).toEqual([]);
  });

  it.each(['head', 'case2'])('makes the tapped device an end where it hangs on one: %s', (end) => {
    const text = withTaps([]).replace(
      '    shield',
      `    from ${end}\n    tap 30 m to p : AirProbe address 3\n    shield`,
    );
    const mended = fixText(text, checkText(text, ['tap-too-long'])[0]!);
    expect(checkText(mended, own)).toEqual([]);
    expect(mended).toContain('p : AirProbe address 3 terminate resistor 120 ohm');
  });
});
