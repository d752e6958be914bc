/** The thread for real: its bundle, as the build makes it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bareBus, isUnknown, seconds, signalOf, wavesOf } from '@fieldpair/shared';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { busOf, headDevice } from '../../../shared/src/testing/network.js';
import type { WaveJob } from './wave-job.js';
import { WaveRunner } from './wave-runner.js';

let folder: string;
let bundle: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fieldpair-waves-'));
  bundle = join(folder, 'wave-worker.cjs');
  const entryPoint = fileURLToPath(new URL('wave-worker.ts', import.meta.url));
  await build({
    entryPoints: [entryPoint],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outfile: bundle,
    logLevel: 'error',
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const { store, study } = busOf('modbus-rtu', { rate: 19_200 })
  .from('head', { device: headDevice, terminate: 120 })
  .to('caseA', 30, { terminate: 120 })
  .built();
const question = { driver: 0, edge: seconds(200e-9) };
const job: WaveJob = { store, bus: 0, questions: [question] };

function runnerOf(file = bundle): WaveRunner {
  const runner = new WaveRunner(file);
  onTestFinished(() => runner.dispose());
  return runner;
}

/** A thread that answers nothing. */
function silent(): string {
  const file = join(folder, 'silent.cjs');
  writeFileSync(file, "require('node:worker_threads').parentPort.on('message', () => undefined);\n");
  return file;
}

describe('waves from another thread', () => {
  it('are those that this thread would compute', async () => {
    const answers = await runnerOf().ask('view', [job, { ...job, questions: [question, { ...question, driver: 1 }] }]);
    const expected = wavesOf(study, question);
    if (isUnknown(expected)) throw new Error(expected.unknown);
    expect(answers?.map((one) => one.length)).toEqual([1, 2]);
    expect(answers?.[0]?.[0]).toEqual(expected);
    expect(answers?.[1]?.[0]).toEqual(expected);
  });

  it('tell the signal of a bus too, as this thread would', async () => {
    const runner = runnerOf();
    const open = busOf('rs485', { rate: 1e6 }).from('head', { terminate: 120 }).to('far', 90).built();
    expect(await runner.askSignal('rules', bareBus(open.bus))).toEqual(signalOf(open.study));
    const running = runnerOf(silent());
    const stopped = running.askSignal('rules', open.bus);
    running.stop('rules');
    expect(await stopped).toBeUndefined();
  });

  it('are unknown for a bus that the store does not have', async () => {
    expect(await runnerOf().ask('view', [{ ...job, bus: 7 }])).toEqual([[{ unknown: 'bus 7 of store testStore' }]]);
  });

  it('are given for the newest task of a name only', async () => {
    const runner = runnerOf();
    const first = runner.ask('view', [job]);
    const second = runner.ask('view', [job]);
    const rules = runner.ask('rules', [job]);
    const third = runner.ask('view', [job]);
    expect(await Promise.all([first, second])).toEqual([undefined, undefined]);
    for (const answers of await Promise.all([rules, third])) expect(answers?.[0]?.[0]).toHaveProperty('landings');
  });

  it('are called off while they run and before', async () => {
    const runner = runnerOf(silent());
    const listeners: (() => void)[] = [];
    const cancellation = {
      isCancellationRequested: false,
      onCancellationRequested: (listener: () => void) => {
        listeners.push(listener);
        return { dispose: () => undefined };
      },
    };
    const running = runner.ask('view', [job], cancellation);
    const waiting = runner.ask('rules', [job], cancellation);
    for (const listener of listeners) listener();
    expect(await Promise.all([running, waiting])).toEqual([undefined, undefined]);
    expect(await runner.ask('view', [job], { ...cancellation, isCancellationRequested: true })).toBeUndefined();
  });

  it('fail in one sentence when the thread does, and the next task has a thread again', async () => {
    const broken = join(folder, 'broken.cjs');
    writeFileSync(broken, "throw new Error('no such luck');\n");
    const runner = runnerOf(broken);
    await expect(runner.ask('view', [job])).rejects.toThrow('The simulation failed: no such luck');
    await expect(runner.ask('view', [job])).rejects.toThrow('The simulation failed: no such luck');
  });

  it('that nobody can send are refused, and do not stop the next', async () => {
    const runner = runnerOf();
    const unsendable = { ...job, store: { ...store, name: (() => '') as never } };
    const refused = expect(runner.ask('view', [unsendable])).rejects.toThrow('The simulation failed: ');
    expect((await runner.ask('rules', [job]))?.[0]?.[0]).toHaveProperty('landings');
    await refused;
  });

  it('end with their runner', async () => {
    const runner = runnerOf(silent());
    const running = runner.ask('view', [job]);
    runner.dispose();
    expect(await running).toBeUndefined();
  });
});
