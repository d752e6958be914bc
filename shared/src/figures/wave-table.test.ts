import { describe, expect, it } from 'vitest';
import { seconds } from '../quantity.js';
import { busOf, headDevice } from '../testing/network.js';
import { isUnknown } from './study.js';
import { waveRecord } from './wave-record.js';
import {
  hasWaves,
  verdictOf,
  waveColumns,
  waveHeading,
  waveNotes,
  waveRow,
  waveSummary,
  worstOf,
} from './wave-table.js';
import { type WaveQuestion, type Waves, wavesOf } from './waves.js';

const { study } = busOf('modbus-rtu', { rate: 500_000 })
  .from('head', { device: headDevice, terminate: 120 })
  .to('caseA', 10)
  .to('caseB', 30, { terminate: 120 })
  .built();

function known(question: Partial<WaveQuestion> = {}): Waves {
  const waves = wavesOf(study, { driver: 0, edge: seconds(25e-9), ...question });
  if (isUnknown(waves)) throw new Error(waves.unknown);
  return waves;
}
const sound = known();
const open = known({ faults: [{ kind: 'open', run: 1, at: 0.5 as never }] });
const crossed = known({ faults: [{ kind: 'crossed', landing: 1 }] });

describe('what waves mean in words', () => {
  it('a bus that is read everywhere', () => {
    expect(sound.landings.map(verdictOf)).toEqual(['sure', 'sure', 'sure']);
    expect(waveSummary(sound)).toMatch(
      /^Every landing is read for certain\. The least margin is [\d.]+ V \([\d.]+ V at worst\), at caseB\.$/,
    );
    expect(waveHeading(study, sound)).toBe('testStore, bus tested: head drives at 500,000 bit/s');
  });

  it('a landing that is cut off', () => {
    expect(open.landings.map(verdictOf).at(-1)).toBe('cut off');
    expect(waveSummary(open)).toMatch(/ Cut off from the driver: caseB\.$/);
    expect(waveRow(open.landings[2]!)).toEqual(['caseB', 'cut off', '', '', '', '', '', '']);
    expect(worstOf(open)!.name).not.toBe('caseB');
  });

  it('a landing that reads everything the other way round', () => {
    expect(verdictOf(crossed.landings[1]!)).toBe('not sure');
    expect(waveSummary(crossed)).toMatch(/^Bits may be misread at caseA\. /);
  });

  it('each row has a cell for each column', () => {
    for (const one of [...sound.landings, ...open.landings]) expect(waveRow(one)).toHaveLength(waveColumns.length);
  });

  it('what was assumed and varied', () => {
    const notes = waveNotes(sound);
    expect(notes[0]).toBe("At 500,000 bit/s a bit lasts 2 us; the driver's edge takes 25 ns.");
    // TIA-485-A: a receiver is sure from 200 mV on.
    expect(notes[1]).toMatch(/^A receiver reads for certain at -200 mV and below and at 200 mV and above, and looks /);
    for (const note of notes) expect(note).toMatch(/^[A-Z].*\.$/);
  });

  it('knows the kinds of bus that have waves', () => {
    const kinds = [
      'rs485',
      'modbus-rtu',
      'bacnet-mstp',
      'peer-485',
      'can',
      'free-topology',
      'ethernet',
      'supply',
      undefined,
    ] as const;
    const having = kinds.filter((kind) => hasWaves(busOf(kind).from('a').built().bus));
    expect(having).toEqual(['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485', 'can']);
  });
});

describe('waves as plain data', () => {
  it('are in SI units, a row of samples for each landing', () => {
    const record = waveRecord(study, sound);
    expect(record).toMatchObject({
      bus: 'tested',
      kind: 'modbus-rtu',
      driver: 'head',
      rate_bit_per_s: 500_000,
      bit_time_s: 2e-6,
      edge_s: 25e-9,
      edge_assumed: false,
    });
    expect(record.threshold_v).toEqual({ low: -0.2, high: 0.2 });
    for (const { step_v, pattern_v } of record.landings) {
      expect(step_v).toHaveLength(record.step.time_s.length);
      expect(pattern_v).toHaveLength(record.pattern.time_s.length);
    }
    // 40 m at 66 % of the speed of light in vacuum.
    expect(record.landings[2]!.delay_s).toBeCloseTo(40 / (0.66 * 299_792_458), 8);
    expect(JSON.stringify(record)).not.toContain('NaN');
  });

  it('say nothing of a landing that is cut off', () => {
    expect(waveRecord(study, open).landings[2]).toMatchObject({
      cut_off: true,
      delay_s: null,
      level_v: null,
      margin_v: null,
    });
  });
});
