/** The language server on this process's standard input and output. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from '../../lsp/serve.js';

export function serveStdio(): void {
  serve(createConnection(ProposedFeatures.all, process.stdin, process.stdout));
}
