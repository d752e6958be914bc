/** Our requests about waveforms, asked of the server as an editor asks them. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { XMLValidator } from 'fast-xml-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver/node';
import type { WaveChoices, WavesFile, WavesPage } from '../protocol.js';
import { type RunningServer, startServer } from './testing/start-server.js';

const text = `
cable Pair22 { conductor 22 AWG impedance 120 ohm velocity 66 % }
cable Bare18 { conductor 18 AWG }
device Head { role head port field : rs485 { load 1/8 edge 100 ns } }
device Board { port field : rs485 { load 1/8 } }
store trial {
  node head : Head
  bus cases : modbus-rtu 500000 8E1 on Pair22 {
    from head terminate resistor 120 ohm
    30 m to caseA : Board address 1
    20 m to caseB : Board address 2
    colours + white - blue
  }
  bus bare : modbus-rtu 9600 on Bare18 { from head 10 m to caseC : Board address 1 }
}
`;
let folder: string;
let server: RunningServer;
const uri = () => pathToFileURL(join(folder, 'store.pair')).href;
const ask = <Result>(method: string, choices: Partial<WaveChoices>, more: object = {}, ...token: object[]) =>
  server.client.sendRequest<Result>(
    method,
    { uri: uri(), choices: { view: 'pattern', ...choices }, width: 700, height: 400, ...more },
    ...token,
  );
const page = (choices: Partial<WaveChoices> = {}, more: object = {}) =>
  ask<WavesPage>('fieldpair/waves', choices, more);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fieldpair-waves-'));
  writeFileSync(join(folder, 'store.pair'), text);
  server = await startServer({ folder });
  await server.client.sendRequest('fieldpair/checkWorkspace');
});
afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

describe('fieldpair/waves', () => {
  it('shows the bus at a place, with its plot, its table and its cursor', async () => {
    const shown = await page({}, { position: { line: 7, character: 8 } });
    expect(shown).toMatchObject({
      title: 'trial, bus cases',
      driver: 'head',
      rate: '500,000 bit/s',
      edge: '100 ns',
      problems: [],
    });
    expect(shown.unknown).toBeUndefined();
    expect(XMLValidator.validate(shown.plot!.svg)).toBe(true);
    expect(shown.table!.rows.map(({ cells }) => cells[0])).toEqual(['head', 'caseA', 'caseB']);
    const { times, lines } = shown.plot!.cursor!;
    for (const { volts } of lines) expect(volts).toHaveLength(times.length);
    expect(shown.buses.map(({ bus }) => bus)).toEqual(['cases', 'bare']);
  });

  it('compares with a fix, and with faults', async () => {
    const { fixes, faults } = await page();
    const fix = fixes.find(({ title }) => title.startsWith('Terminate caseB'))!;
    const mended = await page({ fix: fix.id });
    expect(mended.summary?.changed).toMatch(/^Every landing is read for certain/);
    expect(mended.table!.columns.slice(-2)).toEqual(['read, changed', 'margin, changed']);
    const crossed = faults.flatMap(({ phrases }) => phrases).find((phrase) => phrase === 'crossed at caseA')!;
    expect((await page({ faults: [crossed] })).summary?.changed).toMatch(/^Bits may be misread at caseA\./);
  });

  it('says what is unknown, and what could not be done as chosen', async () => {
    expect(await page({ store: 'trial', bus: 'bare' })).toMatchObject({
      unknown: expect.stringMatching(/^The waves of this bus cannot be told: .*Bare18/),
      notes: [],
    });
    const { problems, plot } = await page({ rate: 'fast', driver: 'nobody' });
    expect(problems).toHaveLength(2);
    expect(plot).toBeDefined();
  });

  it('answers the newest question, and ends the one before it', async () => {
    const answers = await Promise.allSettled([
      page({ rate: '9600' }),
      page({ rate: '19200' }),
      page({ rate: '38400' }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual(['rejected', 'rejected', 'fulfilled']);
    // LSP 3.17: RequestCancelled.
    expect(answers[0]).toMatchObject({ reason: { code: -32800 } });
    const source = new CancellationTokenSource();
    const asked = ask('fieldpair/waves', {}, {}, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: -32800 });
  });

  it('bears sizes without sense', async () => {
    for (const [width, height] of [
      [-5, 1e9],
      ['wide', null],
    ]) {
      const shown = await page({}, { width, height });
      expect(shown.plot!.svg).toMatch(/^<svg [^>]*viewBox="0 0 \d+ \d+"/);
    }
  });

  it('has nothing to show of a file without a bus', async () => {
    expect(
      await server.client.sendRequest('fieldpair/waves', {
        uri: `${uri()}x`,
        choices: { view: 'eye' },
        width: 500,
        height: 300,
      }),
    ).toBeNull();
  });
});

describe('fieldpair/wavesAdvice', () => {
  it('tells what the bus allows, in sentences, from the thread of its own', async () => {
    const sentences = await ask<string[]>('fieldpair/wavesAdvice', { driver: 'caseA' });
    expect(sentences[0]).toMatch(/^By its waveforms, .* bit\/s is the fastest /);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });

  it('has none where waves are unknown, or there is no bus', async () => {
    expect(await ask('fieldpair/wavesAdvice', { store: 'trial', bus: 'bare' })).toEqual([]);
    expect(
      await server.client.sendRequest('fieldpair/wavesAdvice', { uri: `${uri()}x`, choices: { view: 'eye' } }),
    ).toBe(null);
  });
});

describe('fieldpair/wavesFile', () => {
  it('gives a picture and a table, named after what they show', async () => {
    const picture = await ask<WavesFile>('fieldpair/wavesFile', { view: 'eye' }, { format: 'svg' });
    expect(picture.name).toBe('trial-cases-eye.svg');
    expect(XMLValidator.validate(picture.text)).toBe(true);
    const table = await ask<WavesFile>('fieldpair/wavesFile', { faults: ['crossed at caseA'] }, { format: 'csv' });
    expect(table.name).toBe('trial-cases-pattern.csv');
    expect(table.text).toContain('time (s),head (V),caseA (V),caseB (V)\r\n');
    expect(table.text).toContain('"caseA, with crossed at caseA (V)"');
  });

  it('refuses in one sentence where there is nothing', async () => {
    await expect(ask('fieldpair/wavesFile', { store: 'trial', bus: 'bare' }, { format: 'svg' })).rejects.toThrow(
      /^There is nothing to keep; unknown: /,
    );
  });
});
