/** A keystroke's worth of drawing: everything from the network to the SVG, of a store of about 100 nodes. */
import { join } from 'node:path';
import { build } from 'esbuild';
import { catalogueText, storeData, storeText } from './fleet.mjs';
import { row } from './report.mjs';

export async function measureDrawing(root, work, rounds) {
  const outfile = join(work, 'drawing.mjs');
  const entry = "export * from './shared/src/index.ts'; export { Project } from './language/src/index.ts';";
  await build({
    stdin: { contents: entry, resolveDir: root, loader: 'ts' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
  });
  const { Project, createStudy, drawStore, printColours, sceneSvg } = await import(outfile);
  const texts = { 'catalogue.pair': catalogueText, 'store.pair': storeText(storeData(0)) };
  const project = new Project({ resolve: (_, path) => path, read: (file) => ({ text: texts[file] }) });
  for (const file of Object.keys(texts)) project.add(file);
  const [store] = project.storesOf('store.pair');
  const findings = project.findingsOf('store.pair');
  for (const scale of [false, true]) {
    const times = Array.from({ length: rounds }, () => {
      const began = performance.now();
      const studies = store.buses.map((bus) => createStudy(store, bus));
      sceneSvg(drawStore(store, studies, findings, { scale }), printColours);
      return performance.now() - began;
    });
    const how = scale ? 'to scale' : 'evenly';
    row(`drawing a store of ${store.nodes.length} nodes ${how}`, times, { unit: 'ms', limit: 16, digits: 1 });
  }
}
