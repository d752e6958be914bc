/** The thread that simulates, so that neither an editor nor a check waits for it. Its bundle stands beside the server's. */
import { parentPort } from 'node:worker_threads';
import { createStudy, type Unknown, type Waves, wavesOf } from '@fieldpair/shared';
import type { WaveAnswers, WaveJob, WaveReply } from './wave-job.js';

function answersOf({ store, bus: index, questions }: WaveJob): (Waves | Unknown)[] {
  const bus = store.buses[index];
  if (!bus) return questions.map(() => ({ unknown: `bus ${index} of store ${store.name}` }));
  const study = createStudy(store, bus);
  return questions.map((question) => wavesOf(study, question));
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

const reply = (message: WaveReply, memory: ArrayBuffer[] = []) => parentPort?.postMessage(message, memory);

parentPort?.on('message', (jobs: readonly WaveJob[]) => {
  try {
    const answers = jobs.map(answersOf);
    reply({ answers }, memoryOf(answers));
  } catch (error) {
    reply({ failure: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
