import {
  type Bus,
  type BusStudy,
  isUnknown,
  type Known,
  metres,
  type Signal,
  signalOf,
  signalPending,
} from '@fieldpair/shared';
import { expect, it, onTestFinished, vi } from 'vitest';
import { createStudy } from '../../../shared/src/figures/study.js';
import { type BuiltBus, busOf } from '../../../shared/src/testing/network.js';
import { Signals } from './signals.js';

function built(words: { rate?: number; length?: number; name?: string; more?: boolean } = {}): BuiltBus {
  const { rate = 1e6, length = 50, name = 'cases', more = false } = words;
  const bus = busOf('rs485', { rate, name });
  bus.from('a', { terminate: 120 });
  if (more) bus.to('between', 5);
  return bus.to('b', length).built();
}

/** The thread, answering when it is told to. */
class Runner {
  readonly asked: Bus[] = [];
  stopped = 0;
  #end: ((answer: Known<Signal> | undefined) => void) | undefined;

  askSignal(_task: string, bus: Bus): Promise<Known<Signal> | undefined> {
    this.asked.push(bus);
    return new Promise((end) => {
      this.#end = end;
    });
  }
  stop(): void {
    this.stopped++;
    this.#end?.(undefined);
  }
  async answer(): Promise<void> {
    const { store } = built();
    this.#end?.(signalOf(createStudy(store, this.asked.at(-1)!)));
    await vi.advanceTimersByTimeAsync(0);
  }
}

function started(open: readonly string[] = ['test.pair']) {
  vi.useFakeTimers();
  onTestFinished(() => {
    vi.useRealTimers();
  });
  const runner = new Runner();
  const changed: string[] = [];
  const errors: unknown[] = [];
  const written = new Map<string, Bus>();
  const signals = new Signals({
    runner,
    isOpen: (file) => open.includes(file),
    busAt: ({ file, bus }) => written.get(`${file} ${bus}`),
    changed: (file) => changed.push(file),
    failed: (error) => errors.push(error),
  });
  const write = (study: BusStudy) => written.set(`${study.bus.blockPlace.file} ${study.bus.name}`, study.bus);
  const of = (study: BusStudy) => {
    write(study);
    return signals.of(study);
  };
  return { signals, runner, changed, errors, of, written };
}

const sameAs = (study: BusStudy) => signalOf(study);

it('a signal is simulated once nobody has typed for 300 ms, and then told', async () => {
  const { signals, runner, of, changed } = started();
  const { study } = built();
  expect(of(study)).toBe(signalPending);
  await vi.advanceTimersByTimeAsync(250);
  signals.rest();
  await vi.advanceTimersByTimeAsync(250);
  expect(runner.asked).toEqual([]);
  await vi.advanceTimersByTimeAsync(60);
  expect(runner.asked).toHaveLength(1);
  await runner.answer();
  expect(changed).toEqual(['test.pair']);
  expect(of(study)).toEqual(sameAs(study));
  expect(signals.isBusy).toBe(false);
});

it('the same wiring elsewhere in the text is not simulated again', async () => {
  const { runner, of } = started();
  of(built().study);
  await vi.advanceTimersByTimeAsync(300);
  await runner.answer();
  expect(isUnknown(of(built({ name: 'others' }).study))).toBe(false);
  await vi.advanceTimersByTimeAsync(1000);
  expect(runner.asked).toHaveLength(1);
});

it('the last answer stands while the next one is simulated, with the landings as they are counted now', async () => {
  const { runner, of } = started();
  const first = built();
  of(first.study);
  await vi.advanceTimersByTimeAsync(300);
  await runner.answer();
  const before = of(first.study) as Signal;
  const second = built({ more: true });
  const standing = of(second.study) as Signal;
  expect(standing.asWritten.margin).toBe(before.asWritten.margin);
  expect(second.bus.landings[standing.asWritten.landing]!.name).toBe(
    first.bus.landings[before.asWritten.landing]!.name,
  );
  await vi.advanceTimersByTimeAsync(300);
  await runner.answer();
  expect(of(second.study)).toEqual(sameAs(second.study));
});

it('an edit stops what runs for the bus as it was, and waits again', async () => {
  const { runner, of, changed } = started();
  of(built().study);
  await vi.advanceTimersByTimeAsync(300);
  const { study } = built({ length: 60 });
  of(study);
  expect(runner.stopped).toBe(1);
  await vi.advanceTimersByTimeAsync(290);
  expect(runner.asked).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(20);
  expect(runner.asked[1]?.runs[0]?.length).toBe(metres(60));
  await runner.answer();
  expect(changed).toEqual(['test.pair']);
});

it('a check of everything waits for all, and not for a pause', async () => {
  const { signals, runner, of } = started();
  of(built().study);
  of(built({ name: 'others', length: 70 }).study);
  let isSettled = false;
  const settled = signals.settled().then(() => {
    isSettled = true;
  });
  await vi.advanceTimersByTimeAsync(1);
  await runner.answer();
  expect(isSettled).toBe(false);
  await vi.advanceTimersByTimeAsync(1);
  await runner.answer();
  await vi.advanceTimersByTimeAsync(1);
  await settled;
  expect(runner.asked).toHaveLength(2);
});

it('who waits for one file has its buses simulated first, and goes on when they are done', async () => {
  const { signals, runner, of } = started();
  const first = built({ length: 70 });
  of(first.study);
  const other = built({ name: 'others', length: 80 });
  const elsewhere = { ...other.bus, blockPlace: { ...other.bus.blockPlace, file: 'other.pair' } };
  of(createStudy(other.store, elsewhere));
  const settled = signals.settled(new Set(['other.pair']));
  await vi.advanceTimersByTimeAsync(1);
  expect(runner.asked.map(({ runs }) => runs[0]?.length)).toEqual([80]);
  await runner.answer();
  await vi.advanceTimersByTimeAsync(1);
  await settled;
  expect(signals.isBusy).toBe(true);
  await signals.settled(new Set(['third.pair']));
});

it('a bus that is not written any more is not simulated, and nobody waits for it', async () => {
  const { signals, runner, of, written } = started();
  of(built().study);
  written.clear();
  const settled = signals.settled();
  await vi.advanceTimersByTimeAsync(1);
  await settled;
  expect(runner.asked).toEqual([]);
});

it('a simulation that fails is told once, and the bus goes without', async () => {
  const { runner, of, errors } = started();
  runner.askSignal = () => Promise.reject(new Error('no such luck'));
  const { study } = built();
  of(study);
  await vi.advanceTimersByTimeAsync(400);
  expect(errors).toHaveLength(1);
  expect(of(study)).toEqual({ unknown: 'the signal: its simulation failed' });
  await vi.advanceTimersByTimeAsync(400);
  expect(errors).toHaveLength(1);
});

it('kinds that have no waves are not asked about', async () => {
  const { runner, of } = started();
  expect(of(busOf('free-topology').from('a').to('b', 5).built().study)).toHaveProperty('unknown');
  await vi.advanceTimersByTimeAsync(1000);
  expect(runner.asked).toEqual([]);
});
