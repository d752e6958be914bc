/** The language server's entry: over IPC, a pipe or a socket when the arguments name one, else over stdio. */
import { join } from 'node:path';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from './lsp/serve.js';

const named = process.argv.some((argument) => /^--(node-ipc|stdio|socket|pipe)\b/.test(argument));
serve(
  named
    ? createConnection(ProposedFeatures.all)
    : createConnection(ProposedFeatures.all, process.stdin, process.stdout),
  // The bundle of this file is in CommonJS; the others stand beside it.
  { waveWorker: join(__dirname, 'wave-worker.cjs'), packets: join(__dirname, 'packets.cjs') },
);
