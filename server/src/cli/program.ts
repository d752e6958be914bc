/** The command line: arguments in, exit status out. Nothing that a user does ends in a stack trace. */

import { plainLine } from '@fieldpair/shared';
import { Command, CommanderError } from 'commander';
import { addCheck } from './commands/check.js';
import { addDraw } from './commands/draw.js';
import { addExplain } from './commands/explain.js';
import { addFigures } from './commands/figures.js';
import { addFix } from './commands/fix.js';
import { addFormat } from './commands/format.js';
import { addPacket } from './commands/packet.js';
import { addServe } from './commands/serve.js';
import { addWave } from './commands/wave.js';
import { CommandFailure, exitStatus } from './failure.js';
import type { Terminal } from './terminal.js';
import { version } from './version.js';

/** Runs one command. @param args what follows the name of the program. */
export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<number> {
  let status: number = exitStatus.nothingFound;
  const finish = (result: number) => {
    status = result;
  };
  // Commands take these settings over when they are made, so the settings come first.
  const program = new Command('fieldpair')
    .description('Checks, computes and explains the field-bus wiring of stores, written in .pair files.')
    .version(version)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => terminal.out(text),
      writeErr: (text) => terminal.error(text),
      outputError: (text) => terminal.error(errorLine(text.replace(/^error: /, ''))),
    });
  addCheck(program, terminal, finish);
  addFigures(program, terminal, finish);
  addDraw(program, terminal, finish);
  addWave(program, terminal, finish);
  addFix(program, terminal, finish);
  addFormat(program, terminal, finish);
  addPacket(program, terminal, finish);
  addExplain(program, terminal, finish);
  addServe(program);
  try {
    await program.parseAsync(args, { from: 'user' });
    return status;
  } catch (error) {
    if (error instanceof CommanderError) {
      return error.exitCode === 0 ? exitStatus.nothingFound : exitStatus.failed;
    }
    terminal.error(failureLine(error));
    return exitStatus.failed;
  }
}

/** One line for whatever was thrown: a failure in its own words, anything else as the mistake of ours that it is. */
export function failureLine(error: unknown): string {
  if (error instanceof CommandFailure) return errorLine(error.message);
  const reason = error instanceof Error ? error.message : String(error);
  return errorLine(`a mistake inside fieldpair ${version} stopped it (${reason}); please report it with your command`);
}

const errorLine = (text: string) => `fieldpair: ${plainLine(text.trim().replace(/\s*\n\s*/g, ' '))}\n`;
