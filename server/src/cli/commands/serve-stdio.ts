/** The language server on this process's standard input and output. */
import { fileURLToPath } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from '../../lsp/serve.js';

export function serveStdio(): void {
  // The other bundles stand beside that of this file.
  const bundle = (name: string) => fileURLToPath(new URL(`./${name}`, import.meta.url));
  serve(createConnection(ProposedFeatures.all, process.stdin, process.stdout), {
    waveWorker: bundle('wave-worker.cjs'),
    packets: bundle('packets.cjs'),
  });
}
