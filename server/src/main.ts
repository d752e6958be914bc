/** The language server's entry: over IPC, a pipe or a socket when the arguments name one, else over stdio. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from './lsp/serve.js';

const named = process.argv.some((argument) => /^--(node-ipc|stdio|socket|pipe)\b/.test(argument));
const connection = named
  ? createConnection(ProposedFeatures.all)
  : createConnection(ProposedFeatures.all, process.stdin, process.stdout);
// A client may refuse what the libraries ask of it; that is no reason to stop serving it.
process.on('unhandledRejection', (reason) => connection.console.error(String(reason)));
serve(connection);
