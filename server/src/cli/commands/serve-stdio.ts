/** The language server on this process's standard input and output. */
import { fileURLToPath } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from '../../lsp/serve.js';

export function serveStdio(): void {
  // This file is bundled into a chunk, in a folder below that of the other bundles.
  const bundle = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));
  serve(createConnection(ProposedFeatures.all, process.stdin, process.stdout), {
    waveWorker: bundle('wave-worker.cjs'),
    packets: bundle('packets.cjs'),
  });
}
