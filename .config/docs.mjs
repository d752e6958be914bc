/**
 * Writes what is derived from the rules: a page each in shared/rules/, and the list in README.md between its two
 * marks. With `--check` nothing is written; the exit status tells whether anything is out of date.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const checkOnly = process.argv.includes('--check');
const { rules } = await load(`${root}shared/src/rules/index.ts`);

const pages = new Map(rules.map((rule) => [`shared/rules/${rule.id}.md`, pageOf(rule)]));
const readme = readFileSync(`${root}README.md`, 'utf8');
const marks = /(<!-- rules -->\n)[\s\S]*?(<!-- end of rules -->)/;
pages.set(
  'README.md',
  readme.replace(marks, (_, begin, end) => `${begin}${listOf(rules)}${end}`),
);

const stale = [];
for (const [path, text] of pages) {
  if (existsSync(root + path) && readFileSync(root + path, 'utf8') === text) continue;
  stale.push(path);
  if (checkOnly) continue;
  mkdirSync(`${root}shared/rules`, { recursive: true });
  writeFileSync(root + path, text);
}
for (const file of existsSync(`${root}shared/rules`) ? readdirSync(`${root}shared/rules`) : []) {
  const path = `shared/rules/${file}`;
  if (pages.has(path)) continue;
  stale.push(path);
  if (!checkOnly) rmSync(root + path);
}
if (stale.length && checkOnly) {
  console.error(`Out of date: ${stale.join(', ')}. Run npm run docs.`);
  process.exitCode = 1;
} else console.log(stale.length ? `Written: ${stale.length} files` : 'All pages are up to date.');

/** A module of the engine, bundled in memory. */
async function load(entry) {
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    write: false,
    logLevel: 'error',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}

function pageOf({ id, severity, kinds, explanation }) {
  const { what, why, field, mend, bad, good, sources, since } = explanation;
  return `<!-- Generated from shared/src/rules by npm run docs; do not edit. -->
# ${id}

${what}

Severity: ${severity}. Buses: ${kinds === 'every' ? 'every kind' : kinds.join(', ')}. Since ${since}.

## Why it matters

${why}

## How it shows in the field

${field}

## What to do

${mend}

## An example

\`\`\`pair
${bad.trimEnd()}
\`\`\`

Better:

\`\`\`pair
${good.trimEnd()}
\`\`\`

To live with it, write in the bus or the store \`waive ${id} because "REASON"\`.

## Sources

${sources.map((source) => `- ${source}`).join('\n')}
`;
}

function listOf(list) {
  const rows = list.map(
    ({ id, severity, explanation }) =>
      `| [${id}](shared/rules/${id}.md) | ${severity} | ${explanation.what
        .split(/(?<=\.)\s/)[0]
        .replaceAll('|', '\\|')
        .replaceAll('\n', ' ')} |`,
  );
  return `| rule | severity | what it finds |\n| --- | --- | --- |\n${rows.join('\n')}\n`;
}
