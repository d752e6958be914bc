/** The `fieldpair` program, and what its other threads run. */
import { isMainThread } from 'node:worker_threads';
import { fileProblem } from '../files/node-files.js';
import { CommandFailure, exitStatus } from './failure.js';
import { failureLine, runCommandLine } from './program.js';
import { processTerminal } from './terminal.js';

const { failed } = exitStatus;
for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
  process.on(event, (error: unknown) => {
    process.stderr.write(failureLine(error));
    process.exit(failed);
  });
}
const left = new AbortController();
// A reader that has seen enough (`| head`) closes the pipe; that is nobody's mistake. The status stays the one of the
// whole run, so that what scripts ask of it is answered; only what would go on for ever ends.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') return left.abort();
  process.stderr.write(failureLine(new CommandFailure(`cannot print any further: ${fileProblem(error)}`)));
  process.exit(failed);
});

async function run(): Promise<void> {
  if (isMainThread) {
    process.exitCode = await runCommandLine(process.argv.slice(2), {
      ...processTerminal(new URL(import.meta.url)),
      left: left.signal,
    });
  } else {
    const { serveThread } = await import('../threads/serve-thread.js');
    await serveThread();
  }
}
void run();
