/** `fieldpair wave`: the waveforms of one bus while one of its landings drives, and how surely they are read. */
import { type Command, Option } from 'commander';
import type { Terminal } from '../terminal.js';

const views = ['pattern', 'step', 'eye'] as const;
const formats = ['text', 'json', 'svg', 'csv'] as const;

export interface WaveOptions {
  readonly bus: string;
  readonly driver: string;
  readonly store?: string;
  readonly rate?: string;
  readonly edge?: string;
  readonly bits?: string;
  readonly fault: readonly string[];
  readonly landing: readonly string[];
  readonly view: (typeof views)[number];
  readonly format: (typeof formats)[number];
  readonly advise?: boolean;
}

export function addWave(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('wave')
    .summary('compute waveforms and how surely they are read')
    .description(
      'Computes what every landing of a bus sees while one of them drives, and the margin that receivers are left with.',
    )
    .argument('<path...>', 'files and folders')
    .requiredOption('--bus <name>', 'the bus')
    .requiredOption('--driver <landing>', 'the landing that drives')
    .option('--store <name>', 'the store, where several have such a bus')
    .option('--rate <rate>', "instead of the bus's rate: 19200, '500 kbit/s'")
    .option('--edge <time>', "instead of the driver's 10 to 90 % edge: '300 ns'")
    .option('--bits <bits>', 'what is driven: 0101001, the first one long before')
    .option('--fault <fault>', "what is wrong: 'no terminator at caseA2'; may be given several times", collected, [])
    .option('--landing <name>', 'a landing to draw; may be given several times', collected, [])
    .option('--advise', 'add what the bus as written allows: rate, growth, what would mend a thin margin')
    .addOption(new Option('--view <view>', 'what to draw').choices(views).default('pattern'))
    .addOption(new Option('--format <format>', 'how to print').choices(formats).default('text'))
    .action(async (paths: string[], options: WaveOptions) => {
      // The other commands start without the code of plots.
      const { wave } = await import('./wave-run.js');
      finish(wave(paths, options, terminal));
    });
}

const collected = (value: string, before: readonly string[]): string[] => [...before, value];
