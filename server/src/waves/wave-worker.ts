/** The thread that simulates, so that neither an editor nor a check waits for it. Its bundle stands beside the server's. */
import { parentPort } from 'node:worker_threads';
import {
  type Bus,
  type BusStudy,
  createStudy,
  isUnknown,
  type Known,
  type Store,
  signalOf,
  type Unknown,
  type WaveAdvice,
  type Waves,
  waveAdvice,
  wavesOf,
} from '@fieldpair/shared';
import type { AdviceJob, WaveAnswers, WaveJob, WaveReply, WaveRequest } from './wave-job.js';

function studyOf({ store, bus: index }: Pick<WaveJob, 'store' | 'bus'>): Known<BusStudy> {
  const bus = store.buses[index];
  return bus ? createStudy(store, bus) : { unknown: `bus ${index} of store ${store.name}` };
}

function answersOf(job: WaveJob): (Waves | Unknown)[] {
  const study = studyOf(job);
  return job.questions.map((question) => (isUnknown(study) ? study : wavesOf(study, question)));
}

function adviceOn(job: AdviceJob): Known<WaveAdvice> {
  const study = studyOf(job);
  return isUnknown(study) ? study : waveAdvice(study, job.driver);
}

/** The memory of the samples, which is handed over instead of copied. */
function memoryOf(answers: WaveAnswers): ArrayBuffer[] {
  const memory = new Set<ArrayBuffer>();
  for (const one of answers.flat()) {
    if (!('landings' in one)) continue;
    for (const { time, volts } of [one.step, one.pattern]) {
      for (const { buffer } of [time, ...volts]) if (buffer instanceof ArrayBuffer) memory.add(buffer);
    }
  }
  return [...memory];
}

/** A store around a bus that came without one. */
const storeOf = (bus: Bus): Store => ({
  name: '',
  place: bus.place,
  nodes: [],
  buses: [bus],
  networks: [],
  waivers: [],
  choices: { cables: [], repeaters: [] },
});

const reply = (message: WaveReply, memory: ArrayBuffer[] = []) => parentPort?.postMessage(message, memory);

parentPort?.on('message', (request: WaveRequest) => {
  try {
    if ('signalOf' in request) {
      const bus = request.signalOf;
      reply({ signal: signalOf(createStudy(storeOf(bus), bus)) });
      return;
    }
    if ('adviseOn' in request) {
      reply({ advice: adviceOn(request.adviseOn) });
      return;
    }
    const answers = request.jobs.map(answersOf);
    reply({ answers }, memoryOf(answers));
  } catch (error) {
    reply({ failure: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
