/** Where a command prints, and what the place it prints to can do. */
import { styleText } from 'node:util';

export interface Terminal {
  readonly workingFolder: string;
  /** Whether colours are wanted on standard output. */
  readonly colour: boolean;
  /** Whether standard error is a terminal, so that progress can be drawn over itself there. */
  readonly drawsProgress: boolean;
  /** What another thread of this program runs; absent where there is none. */
  readonly program?: URL;
  /** Ends what would go on for ever; a process that is left simply ends. */
  readonly left?: AbortSignal;
  out(text: string): void;
  error(text: string): void;
}

type Style = Parameters<typeof styleText>[0];

/** Colours a text, or leaves it as it is. */
export type Paint = (style: Style, text: string) => string;

export const painter = (colour: boolean): Paint =>
  colour ? (style, text) => styleText(style, text, { validateStream: false }) : (_style, text) => text;

/** This process's own terminal. @param program what another thread of it runs */
export function processTerminal(program: URL): Terminal {
  return {
    program,
    workingFolder: process.cwd(),
    colour: wantsColour(process.stdout.isTTY, process.env),
    drawsProgress: process.stderr.isTTY === true,
    out: (text) => void process.stdout.write(text),
    error: (text) => void process.stderr.write(text),
  };
}

/** `NO_COLOR` as https://no-color.org has it; `FORCE_COLOR` as Node itself reads it. */
export function wantsColour(isTerminal: boolean | undefined, environment: NodeJS.ProcessEnv): boolean {
  if (environment.NO_COLOR) return false;
  if (environment.FORCE_COLOR !== undefined) return !['0', 'false'].includes(environment.FORCE_COLOR);
  return isTerminal === true && environment.TERM !== 'dumb';
}
