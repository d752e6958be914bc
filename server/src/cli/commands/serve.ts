/** `fieldpair serve`: the language server for any editor that speaks the Language Server Protocol. */
import type { Command } from 'commander';

export function addServe(program: Command): void {
  program
    .command('serve')
    .summary('serve an editor by the Language Server Protocol')
    .description('Answers an editor by the Language Server Protocol, until the editor ends it.')
    .requiredOption('--stdio', 'speak on standard input and output')
    .action(async () => {
      // The other commands start without the server's code.
      const { serveStdio } = await import('./serve-stdio.js');
      serveStdio();
    });
}
