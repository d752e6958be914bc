/**
 * Runs the end-to-end tests in one process, so that they share one workbench.
 *
 *   node --test-reporter=./report.mjs run.mjs [PART…]      only the files whose name contains one of the parts
 *
 * What makes the pictures of the README runs only when its name is given: `pictures`.
 */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { after, suite, test } from 'node:test';
import { closeSharedWorkbench, scenarios, screenshots } from './scenario.mjs';

const here = new URL('.', import.meta.url);
const parts = process.argv.slice(2);
const files = readdirSync(here)
  .filter((name) => name.endsWith('.test.mjs') || (parts.includes('pictures') && name.endsWith('.pictures.mjs')))
  .filter((name) => parts.length === 0 || parts.some((part) => name.includes(part)))
  .sort();
if (files.length === 0) throw new Error(`No test file has a name with ${parts.join(' or ')}.`);

rmSync(screenshots, { recursive: true, force: true });
mkdirSync(screenshots, { recursive: true });
for (const file of files) await import(new URL(file, here));

suite('Fieldpair in VS Code', () => {
  after(closeSharedWorkbench);
  for (const { name, run } of scenarios) test(name, { timeout: 180_000 }, run);
});
