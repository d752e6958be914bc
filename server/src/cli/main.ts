/** The `fieldpair` program, and what its other threads run. */
import { isMainThread } from 'node:worker_threads';
import { failureLine, runCommandLine } from './program.js';
import { processTerminal } from './terminal.js';

const failed = 2;
for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
  process.on(event, (error: unknown) => {
    process.stderr.write(failureLine(error));
    process.exit(failed);
  });
}
// A reader that has seen enough (`| head`) closes the pipe; that is nobody's mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') process.stderr.write(failureLine(error));
  process.exit(error.code === 'EPIPE' ? 0 : failed);
});

async function run(): Promise<void> {
  if (isMainThread) {
    process.exitCode = await runCommandLine(process.argv.slice(2), processTerminal(new URL(import.meta.url)));
  } else {
    const { serveThread } = await import('../threads/serve-thread.js');
    await serveThread();
  }
}
void run();
