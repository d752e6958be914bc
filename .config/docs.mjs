/**
 * Writes what is derived from the program: a page for each rule in shared/rules/, the list of rules in README.md and,
 * in language/README.md, what the language reference says of each statement; parts of a page stand between marks. With
 * `--check` nothing is written; the exit status tells whether anything is out of date.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const checkOnly = process.argv.includes('--check');
const { rules } = await load('shared/src/rules/index.ts');
const { referenceParts } = await load('language/src/reference/page.ts');

const pages = new Map(rules.map((rule) => [`shared/rules/${rule.id}.md`, pageOf(rule)]));
pages.set('README.md', filled('README.md', new Map([['rules', listOf(rules)]])));
pages.set('language/README.md', filled('language/README.md', referenceParts()));

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

/** A page with its parts between their marks; throws where a mark is missing. */
function filled(path, parts) {
  let text = readFileSync(root + path, 'utf8');
  for (const [name, part] of parts) {
    const marks = new RegExp(`(<!-- ${name} -->\n)[\\s\\S]*?(<!-- end of ${name} -->)`);
    if (!marks.test(text)) throw new Error(`${path} has no marks for ${name}.`);
    text = text.replace(marks, (_, begin, end) => begin + part + end);
  }
  return text;
}

/** A module of the program, bundled in memory. */
async function load(entry) {
  const { outputFiles } = await build({
    entryPoints: [root + entry],
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
