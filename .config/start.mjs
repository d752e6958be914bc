/**
 * The main job on a sample: checks a store whose wiring was recorded as found and computes its figures, by the same
 * command line that people use. The start of each report goes to the terminal, all of it in every format to
 * `.out/start/`.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { stripVTControlCharacters } from 'node:util';

const root = fileURLToPath(new URL('..', import.meta.url));
const sample = 'samples/as-found';
const results = '.out/start';
const shownLines = 48;

/** `fieldpair check` says with status 1 that it has found something, as it must on this sample. */
const reports = [
  { command: 'check', format: 'text', file: 'check.txt', expectedStatus: 1 },
  { command: 'check', format: 'json', file: 'check.json', expectedStatus: 1 },
  { command: 'check', format: 'sarif', file: 'check.sarif', expectedStatus: 1 },
  { command: 'check', format: 'junit', file: 'check.junit.xml', expectedStatus: 1 },
  { command: 'figures', format: 'text', file: 'figures.txt', expectedStatus: 0 },
  { command: 'figures', format: 'json', file: 'figures.json', expectedStatus: 0 },
  { command: 'figures', format: 'csv', file: 'figures.csv', expectedStatus: 0 },
];

/** Runs one report and returns what it printed, in colour when this terminal has colours. */
async function run({ command, format, expectedStatus }) {
  const colour = format === 'text' && process.stdout.isTTY && !process.env.NO_COLOR ? { FORCE_COLOR: '1' } : {};
  const child = spawn(process.execPath, ['server/bin/fieldpair.js', command, sample, '--format', format], {
    cwd: root,
    env: { ...process.env, ...colour },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const chunks = [];
  child.stdout.on('data', (chunk) => chunks.push(chunk));
  const status = await new Promise((resolve) => child.on('close', resolve));
  if (status !== expectedStatus) {
    throw new Error(`fieldpair ${command} ${sample} --format ${format} ended with status ${status}`);
  }
  return Buffer.concat(chunks).toString('utf8');
}

function show(title, text, file) {
  const lines = text.trimEnd().split('\n');
  console.log(`\n$ npx fieldpair ${title}\n`);
  console.log(lines.slice(0, shownLines).join('\n'));
  if (shownLines < lines.length) {
    console.log(`... ${lines.length - shownLines} more lines in ${results}/${file}`);
  }
}

rmSync(`${root}${results}`, { recursive: true, force: true });
mkdirSync(`${root}${results}`, { recursive: true });
try {
  const texts = await Promise.all(reports.map(run));
  for (const [index, { command, format, file }] of reports.entries()) {
    const text = texts[index];
    writeFileSync(`${root}${results}/${file}`, stripVTControlCharacters(text));
    if (format === 'text') {
      show(`${command} ${sample}`, text, file);
    }
  }
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
const { findings } = JSON.parse(readFileSync(`${root}${results}/check.json`, 'utf8'));
const next = [
  [`npx fieldpair explain ${findings[0].rule}`, 'why that rule matters, how it shows and how to mend it'],
  ['npx fieldpair figures samples/full', 'the numbers of a whole store that is wired well'],
  ['npx fieldpair --help', 'all commands'],
  ['npm run package', 'the extension for VS Code'],
];
const width = Math.max(...next.map(([command]) => command.length));
console.log(`\nResults: ${results}/ (${reports.map((report) => report.file).join(', ')})\nTry next:`);
for (const [command, what] of next) {
  console.log(`  ${command.padEnd(width)}  ${what}`);
}
