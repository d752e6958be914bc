/**
 * One workbench for all test files, opened by the first scenario and closed at the end.
 *
 * Its workspace is a copy of the samples with the trial stores beside them, so scenarios may save what they change.
 */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openWorkbench } from './harness/open-workbench.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Where run.sh has put the workbench and the tools beside it. */
export const workbenchFolder = process.env.WORKBENCH_DIR ?? join(root, '.out/workbench');

export const screenshots = join(root, '.out/screenshots');

/** A copy of the samples and the trial stores, which the end of the process removes. */
export function copyOfStores() {
  const scratch = mkdtempSync(join(tmpdir(), 'fieldpair-'));
  process.once('exit', () => rmSync(scratch, { recursive: true, force: true }));
  const folder = join(scratch, 'stores');
  cpSync(join(root, 'samples'), folder, { recursive: true });
  cpSync(join(root, 'test/e2e/trial'), join(folder, 'trial'), { recursive: true });
  return folder;
}

/**
 * @param {Partial<import('./harness/open-workbench.mjs').Options>} options
 * @returns {Promise<import('./harness/workbench.mjs').Workbench>}
 */
function openFieldpair(options) {
  return openWorkbench({
    folder: workbenchFolder,
    vsix: join(root, 'extension/dist/fieldpair.vsix'),
    settings: { 'editor.minimap.enabled': false, 'workbench.colorTheme': 'Default Light Modern' },
    ...options,
  });
}

/** The folder that the shared workbench has open. */
export const stores = copyOfStores();

/** Sets the settings of the shared workbench's workspace; earlier ones are forgotten. */
export function useSettings(settings) {
  mkdirSync(join(stores, '.vscode'), { recursive: true });
  writeFileSync(join(stores, '.vscode/settings.json'), JSON.stringify(settings));
}

let shared;

export async function closeSharedWorkbench() {
  await (await shared)?.close();
}

/** All tests, in the order in which their files are read. */
export const scenarios = [];

/**
 * A test in the shared workbench. What it leaves open is closed without saving; when it fails, a picture, the errors of
 * the page and the logs are kept.
 *
 * @param {string} name
 * @param {(workbench: import('./harness/workbench.mjs').Workbench) => Promise<void>} steps
 */
export function scenario(name, steps) {
  const run = async () => {
    shared ??= openFieldpair({ workspace: stores });
    const workbench = await shared;
    try {
      await withEvidence(workbench, name, steps);
    } finally {
      await closeEditors(workbench);
    }
  };
  scenarios.push({ name, run });
}

/**
 * A test in a workbench of its own.
 *
 * @param {string} name
 * @param {Partial<import('./harness/open-workbench.mjs').Options>} options
 * @param {(workbench: import('./harness/workbench.mjs').Workbench) => Promise<void>} steps
 */
export function scenarioApart(name, options, steps) {
  const run = async () => {
    const workbench = await openFieldpair({ workspace: copyOfStores(), ...options });
    try {
      await withEvidence(workbench, name, steps);
    } finally {
      await workbench.close();
    }
  };
  scenarios.push({ name, run });
}

/** Takes a picture that documents what a user sees. */
export function picture(workbench, name) {
  return workbench.screenshot(join(screenshots, `${name}.png`));
}

async function withEvidence(workbench, name, steps) {
  try {
    await steps(workbench);
  } catch (error) {
    await picture(workbench, `failed-${name.replaceAll(/\W+/g, '-')}`);
    const { 'server output': _, ...logs } = await workbench.logs(/Fieldpair/);
    const tails = Object.entries(logs).map(([file, text]) => `${file}:\n${text.split('\n').slice(-25).join('\n')}`);
    console.error(['Errors of the page:', ...workbench.browserErrors.slice(-10), ...tails].join('\n'));
    throw error;
  }
}

async function closeEditors(workbench) {
  const { page } = workbench;
  for (let presses = 0; presses < 3; presses++) await page.keyboard.press('Escape');
  await workbench.command('View: Focus First Editor Group');
  const dirty = page.locator('.tab.dirty');
  for (let left = await dirty.count(); left > 0; left--) {
    await dirty.first().click();
    await workbench.command('View: Revert and Close Editor');
    await dirty.nth(left - 1).waitFor({ state: 'detached' });
  }
  await workbench.command('View: Close All Editors');
  await workbench.command('Notifications: Clear All Notifications');
}
