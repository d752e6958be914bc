/**
 * Measures what people wait for, on a generated fleet, as ratios within one run.
 *
 *   npm run bench                 1,000 and 5,000 stores
 *   npm run bench -- --smoke      50 and 200 stores: whether it runs, not how fast
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { dump } from 'js-yaml';
import { catalogueText, storeData, storeText } from './fleet.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const smoke = process.argv.includes('--smoke');
const [fleetSize, largeSize] = smoke ? [50, 200] : [1000, 5000];
const work = mkdtempSync(join(tmpdir(), 'fieldpair-bench-'));
const row = (what, value) => console.log(`${what.padEnd(74)} ${value}`);
const median = (values) => values.toSorted((left, right) => left - right)[Math.floor(values.length / 2)];

try {
  console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}\n`);
  const fleet = join(work, 'fleet');
  mkdirSync(fleet);
  writeFileSync(join(fleet, 'catalogue.pair'), catalogueText);
  let bytes = 0;
  let yamlBytes = 0;
  for (let index = 0; index < fleetSize; index++) {
    const data = storeData(index);
    const text = storeText(data);
    const yaml = dump(data);
    bytes += text.length;
    yamlBytes += yaml.length;
    writeFileSync(join(fleet, `store${index}.pair`), text);
    writeFileSync(join(fleet, `store${index}.yaml`), yaml);
  }
  row(
    `stores of about 100 nodes; ${(bytes / 1e6).toFixed(1)} MB of .pair, ${(yamlBytes / 1e6).toFixed(1)} MB of YAML`,
    fleetSize,
  );

  const loader = join(root, 'test/bench/load-yaml.mjs');
  const time = (program, ...args) => {
    const began = performance.now();
    const { status, stderr } = spawnSync(process.execPath, [program, ...args], {
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    });
    if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr}`);
    return performance.now() - began;
  };
  const rounds = smoke ? 1 : 5;
  const checks = [];
  const loads = [];
  for (let round = 0; round < rounds; round++) {
    checks.push(time(join(root, 'server/bin/fieldpair.js'), 'check', fleet, '--format', 'json'));
    loads.push(time(loader, fleet));
  }
  row('fieldpair check, whole process, median ms', median(checks).toFixed(0));
  row('js-yaml loading the same data, whole process, median ms', median(loads).toFixed(0));
  row('check / js-yaml (at most 1.00 wanted)', (median(checks) / median(loads)).toFixed(2));

  await measureProject(largeSize);
} finally {
  rmSync(work, { recursive: true, force: true });
}

/** The engine behind the editor, with all stores in it: a keystroke, a hover's worth of names, memory. */
async function measureProject(size) {
  const module = join(work, 'language.mjs');
  await build({
    entryPoints: [join(root, 'language/src/index.ts')],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile: module,
    logLevel: 'error',
  });
  const { Project } = await import(module);
  const texts = new Map([['catalogue.pair', catalogueText]]);
  for (let index = 0; index < size; index++) texts.set(`store${index}.pair`, storeText(storeData(index)));
  const host = {
    resolve: (_, path) => path,
    read: (file) => (texts.has(file) ? { text: texts.get(file) } : { problem: 'it does not exist', missing: true }),
  };
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const began = performance.now();
  const project = new Project(host);
  for (const file of texts.keys()) project.add(file);
  const { findings } = project.check();
  row(`reading and checking ${size} stores in one process, ms`, (performance.now() - began).toFixed(0));
  row('findings in the healthy fleet', findings.length);
  globalThis.gc?.();
  row('heap per store kept, KB', ((process.memoryUsage().heapUsed - before) / 1024 / size).toFixed(1));
  const edits = [];
  const text = texts.get('store7.pair');
  for (let key = 0; key < 200; key++) {
    const changed = text.replace('38 ft', `${38 + (key % 9)} ft`).replace('Market', `Market ${key}`);
    const started = performance.now();
    project.add('store7.pair', changed);
    project.findingsOf('store7.pair');
    edits.push(performance.now() - started);
  }
  const sorted = edits.toSorted((left, right) => left - right);
  row('keystroke to findings, median ms', median(edits).toFixed(2));
  row(
    'keystroke to findings, 95th percentile ms (under 20 wanted)',
    sorted[Math.floor(sorted.length * 0.95)].toFixed(2),
  );
}
