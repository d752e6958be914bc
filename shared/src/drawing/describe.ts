/** A bus in words, for those who cannot see the drawing. */
import type { BusStudy } from '../figures/study.js';
import type { Run } from '../network.js';
import { strandsOf } from './strands.js';
import { busFacts, landingName, nameOf, runName } from './words.js';

export function describeBus(study: BusStudy): string {
  const { bus, shape } = study;
  const sentences = [
    `Bus ${bus.name}${bus.label === undefined ? '' : `, ${bus.label}`}: ${busFacts(study).join(', ')}.`,
  ];
  const reached = (run: Run | undefined, landing: number | undefined, again: boolean) => {
    const after = run ? `After ${study.lengthText(run.length)}${run.tap ? ' of tap' : ''}: ` : 'From ';
    if (landing === undefined) return `${after}nothing; the cable ends nowhere.`;
    const one = bus.landings[landing];
    return `${after}${again || !one ? `${nameOf(bus, landing)} again` : landingName(study, one)}.`;
  };
  for (const { stops } of strandsOf(bus, shape, bus.runs.length + 1)) {
    for (const { run, landing, again, hanging } of stops) {
      sentences.push(reached(run, landing, again));
      for (const one of hanging) sentences.push(reached(one.run, one.landing, one.again));
    }
  }
  for (const earth of bus.earths) sentences.push(`The shield is earthed at ${nameOf(bus, earth.landing)}.`);
  for (const bias of bus.biases) sentences.push(`The bus is biased at ${nameOf(bus, bias.landing)}.`);
  for (const run of bus.runs) if (run.spare) sentences.push(`${runName(study, run)}.`);
  return sentences.join(' ');
}
