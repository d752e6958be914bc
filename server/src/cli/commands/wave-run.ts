/** What `fieldpair wave` does, apart from its options: other commands start without the code of plots. */
import { Project } from '@fieldpair/language';
import { landingNamed, quantityFrom, Refusal, readFault } from '@fieldpair/language/what-if';
import {
  adviceRecord,
  adviceText,
  type Bus,
  type BusStudy,
  bitsPerSecond,
  createStudy,
  type Fault,
  hasWaves,
  isUnknown,
  type Landing,
  listed,
  type Store,
  seconds,
  type WaveAdvice,
  type WaveQuestion,
  waveAdvice,
  waveHeading,
  waveRecord,
  wavesOf,
} from '@fieldpair/shared';
import { drawWaves, eyePattern, plotOf, plotSamples } from '@fieldpair/shared/plot';
import { NodeFiles } from '../../files/node-files.js';
import { pairFiles } from '../../files/pair-files.js';
import { waveCsv } from '../../waves/wave-csv.js';
import { CommandFailure, exitStatus } from '../failure.js';
import { waveText } from '../formats/wave-text.js';
import type { Terminal } from '../terminal.js';
import { addFile } from './add-file.js';
import type { WaveOptions } from './wave.js';

export function wave(path: readonly string[], options: WaveOptions, terminal: Terminal): number {
  const project = new Project(new NodeFiles());
  const files = pairFiles(path, terminal.workingFolder);
  for (const file of files) addFile(project, file, terminal.workingFolder);
  const { store, bus } = oneBus(project, files, options);
  if (bus.kind !== undefined && !hasWaves(bus)) {
    throw new CommandFailure(`bus ${bus.name} is ${bus.kind}; waveforms are computed for RS-485 and CAN alone`);
  }
  const driver = granted(landingNamed(bus, options.driver));
  const shown = options.landing.map((name) => granted(landingNamed(bus, name)).name);
  const cables = project.catalogueOf(bus.place.file);
  const cableNamed = (name: string) => cables.map((one) => one.cables.get(name)).find((cable) => cable);
  const faults = options.fault.map((phrase) => granted(readFault(bus, phrase, cableNamed)));
  const study = createStudy(store, bus);
  const waves = wavesOf(study, questionOf(options, driver, faults));
  if (isUnknown(waves))
    throw new CommandFailure(`the waveforms of bus ${bus.name} cannot be told; unknown: ${waves.unknown}`);
  const subject = [waveHeading(study, waves), ...options.fault].join(', ');
  const kind = options.view === 'step' ? 'step' : 'pattern';
  const advice = options.advise ? adviceOn(study, driver, options) : undefined;
  const landings = shown.length ? { landings: shown } : {};
  switch (options.format) {
    case 'json':
      terminal.out(
        `${JSON.stringify({ schema: 'fieldpair-wave-1', store: store.name, faults: options.fault, ...waveRecord(study, waves), ...(advice && { advice: adviceRecord(advice) }) }, undefined, 1)}\n`,
      );
      break;
    case 'csv':
      terminal.out(waveCsv([{ name: '', waves }], kind));
      break;
    case 'svg':
      terminal.out(
        `${drawWaves(plotOf(waves, { view: options.view, ...landings, heading: subject, subject, width: 960, height: 480, prefix: 'wave' })).svg}\n`,
      );
      break;
    case 'text':
      terminal.out(
        waveText(
          {
            heading: subject,
            waves,
            kind,
            ...(shown.length ? { drawn: shown } : {}),
            ...(advice && { advice: adviceText(study, advice) }),
          },
          terminal,
        ),
      );
  }
  return exitStatus.nothingFound;
}

/** @throws CommandFailure when there is none, or the format has no room for it. */
function adviceOn(study: BusStudy, driver: Landing, { format }: WaveOptions): WaveAdvice {
  if (format !== 'text' && format !== 'json') throw new CommandFailure('--advise goes with --format text or json');
  const advice = waveAdvice(study, driver.index);
  if (isUnknown(advice))
    throw new CommandFailure(`there is no advice on bus ${study.bus.name}; unknown: ${advice.unknown}`);
  return advice;
}

function questionOf({ rate, edge, bits, view }: WaveOptions, driver: Landing, faults: readonly Fault[]): WaveQuestion {
  const pattern = bits ?? (view === 'eye' ? eyePattern : undefined);
  if (pattern !== undefined && !/^[01]{2,4096}$/.test(pattern)) {
    throw new CommandFailure(`--bits ${pattern.slice(0, 40)} is no row of 2 to 4096 zeros and ones`);
  }
  return {
    driver: driver.index,
    ...(rate === undefined
      ? {}
      : { rate: bitsPerSecond(granted(quantityFrom(rate, 'rate', { least: 10, most: 1e8 }, 'bit/s'))) }),
    ...(edge === undefined ? {} : { edge: seconds(granted(quantityFrom(edge, 'time', { least: 1e-10, most: 1 }))) }),
    ...(pattern === undefined ? {} : { pattern }),
    samples: plotSamples,
    ...(faults.length ? { faults } : {}),
  };
}

/** What was asked for. @throws CommandFailure when it cannot be had. */
function granted<T>(answer: T | Refusal): T {
  if (answer instanceof Refusal) throw new CommandFailure(answer.reason);
  return answer;
}

/** The one bus that the options name. @throws CommandFailure when there is none, or several. */
function oneBus(
  project: Project,
  files: readonly string[],
  { bus: name, store: wanted }: WaveOptions,
): { readonly store: Store; readonly bus: Bus } {
  const stores = new Map<string, Store>();
  for (const file of files)
    for (const store of project.storesOf(file)) stores.set(`${store.place.file} ${store.place.start}`, store);
  const named = [...stores.values()].filter((store) => wanted === undefined || store.name === wanted);
  if (named.length === 0) {
    const names = [...stores.values()].map((store) => store.name);
    throw new CommandFailure(
      wanted === undefined
        ? 'there is no store in these files'
        : `there is no store ${wanted} in these files; there are ${listed(names) || 'none'}`,
    );
  }
  const buses = named.flatMap((store) => store.buses.map((bus) => ({ store, bus })));
  const found = buses.filter(({ bus }) => bus.name === name);
  const [first, second] = found;
  if (!first)
    throw new CommandFailure(
      `there is no bus ${name}; there are ${listed(buses.map(({ bus }) => bus.name)) || 'none'}`,
    );
  if (second)
    throw new CommandFailure(
      `stores ${listed(found.map(({ store }) => store.name))} have a bus ${name}; name one with --store`,
    );
  return first;
}
