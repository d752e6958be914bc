/**
 * Measures what people wait for, on a generated fleet, against what is wanted.
 *
 *   npm run bench                 1,000 stores in the terminal, 5,000 in the editor
 *   npm run bench -- --smoke      50 and 200 stores: whether it runs, not how fast
 *   npm run bench -- --waves      waveforms alone, against ngspice
 *   npm run bench -- --long       all that the simulator has to be waited for: 200 bits, some minutes
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { dump } from 'js-yaml';
import { measureDrawing } from './drawing.mjs';
import { measureEditor } from './editor.mjs';
import { measureEngine } from './engine.mjs';
import { catalogueText, storeData, storeText } from './fleet.mjs';
import { measurePackets } from './packets.mjs';
import { compareProcesses } from './processes.mjs';
import { row } from './report.mjs';
import { measureWaves } from './waves.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const smoke = process.argv.includes('--smoke');
const [fleetSize, largeSize, packetCount, rounds] = smoke ? [50, 200, 6, 1] : [1000, 5000, 100, 5];
const work = mkdtempSync(join(tmpdir(), 'fieldpair-bench-'));

/** Writes a folder of stores with their catalogue, and the same data as YAML where it is wanted. */
function writeFleet(name, indices, withYaml = false) {
  const folder = join(work, name);
  mkdirSync(folder);
  writeFileSync(join(folder, 'catalogue.pair'), catalogueText);
  let bytes = 0;
  let yamlBytes = 0;
  for (const index of indices) {
    const data = storeData(index);
    const text = storeText(data);
    bytes += text.length;
    writeFileSync(join(folder, `store${index}.pair`), text);
    if (!withYaml) continue;
    const yaml = dump(data);
    yamlBytes += yaml.length;
    writeFileSync(join(folder, `store${index}.yaml`), yaml);
  }
  return { folder, bytes, yamlBytes };
}

async function measureStores() {
  const { folder, bytes, yamlBytes } = writeFleet('fleet', Array(fleetSize).keys(), true);
  const sizes = `${(bytes / 1e6).toFixed(1)} MB of .pair, ${(yamlBytes / 1e6).toFixed(1)} MB of YAML`;
  row(`stores of about 100 nodes; ${sizes}`, fleetSize);
  compareProcesses(root, folder, rounds);
  await measureEngine(root, work, largeSize);
  const large = writeFleet('large', Array(largeSize).keys());
  const alone = writeFleet('alone', [7]);
  await measureEditor(root, large.folder, alone.folder, largeSize);
  await measureDrawing(root, work, smoke ? 3 : 50);
  const packets = writeFleet('packets', Array(packetCount).keys());
  measurePackets(root, work, packets.folder, packetCount, 1);
}

try {
  console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}\n`);
  if (!process.argv.includes('--waves')) await measureStores();
  await measureWaves(root, work, { smoke, long: process.argv.includes('--long') });
} finally {
  rmSync(work, { recursive: true, force: true });
}
