/**
 * Opens the VS Code workbench in headless Chromium with an extension installed.
 *
 * Everything that a workbench writes goes into one scratch folder, which `close` removes.
 */
import { rmSync } from 'node:fs';
import { mkdtemp, realpath, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { VscodeServer } from './vscode-server.mjs';
import { Workbench } from './workbench.mjs';

/** Makes runs alike, keeps the workbench off the network and quiet. */
const quietSettings = {
  'chat.commandCenter.enabled': false,
  'editor.cursorBlinking': 'solid',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  // The web workbench saves after a delay by default; the desktop one does not.
  'files.autoSave': 'off',
  'git.openRepositoryInParentFolders': 'never',
  'json.schemaDownload.enable': false,
  'npm.fetchOnlinePackageInfo': false,
  'telemetry.telemetryLevel': 'off',
  'typescript.disableAutomaticTypeAcquisition': true,
  'update.mode': 'none',
  'update.showReleaseNotes': false,
  'workbench.enableExperiments': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
};

const chromiumArguments = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // No name resolves, so no request leaves the machine.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

/** Files that the server refers to but that come with other programs. */
const absentFiles = /\/(vsda(_bg)?\.(js|wasm)|_static\/\S*|manifest\.json)$/;
const knownErrors = /^Failed to load resource|^A bad HTTP response code|\[Service Worker\] registration/;

/**
 * @typedef {object} Options
 * @property {string} folder where install.sh put things
 * @property {string} vsix the packaged extension
 * @property {string} workspace the folder (or .code-workspace file) to open; in place, so copy it if a test saves
 * @property {Record<string, unknown>} [settings] the user's, laid over `quietSettings`
 * @property {boolean} [restricted] leaves the workspace untrusted
 * @property {{ width: number, height: number }} [viewport]
 * @property {number} [timeout] milliseconds that each wait may take
 */

/**
 * Starts the server and the browser and waits until the workbench is up.
 *
 * @param {Options} options
 * @returns {Promise<Workbench>}
 */
export async function openWorkbench(options) {
  const { restricted = false, timeout = 30_000, viewport = { width: 1440, height: 900 } } = options;
  const { chromium } = createRequire(join(options.folder, 'package.json'))('playwright-core');
  const workspace = await realpath(options.workspace);
  const scratch = await mkdtemp(join(tmpdir(), 'workbench-'));
  const server = new VscodeServer(options.folder, scratch);
  const undo = [
    cleanOnExit(() => {
      server.kill();
      rmSync(scratch, { recursive: true, force: true });
    }),
    () => rm(scratch, { recursive: true, force: true, maxRetries: 5 }),
  ];
  const close = async () => {
    const failures = [];
    while (undo.length) {
      try {
        await undo.pop()();
      } catch (error) {
        failures.push(error);
      }
    }
    if (failures.length) throw failures[0];
  };

  try {
    await server.writeSettings({ ...quietSettings, ...trustSettings(restricted), ...options.settings });
    await server.installVsix(options.vsix);
    undo.push(() => server.stop());
    const origin = await server.start({ timeout, trustAll: !restricted });

    const browser = await chromium.launch({
      executablePath: '/usr/bin/chromium',
      args: chromiumArguments,
      env: { ...process.env, TMPDIR: join(scratch, 'tmp') },
      timeout,
      // See cleanOnExit: on a signal the process exits, and on its exit Playwright ends the browser.
      ...{ handleSIGINT: false, handleSIGTERM: false, handleSIGHUP: false },
    });
    undo.push(() => browser.close());
    const context = await browser.newContext({
      viewport,
      reducedMotion: 'reduce',
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    context.setDefaultTimeout(timeout);
    const page = await context.newPage();
    const browserErrors = collectErrors(page);

    const kind = workspace.endsWith('.code-workspace') ? 'workspace' : 'folder';
    await page.goto(`${origin}/?${kind}=${encodeURIComponent(workspace)}`);
    const passed = (mark) => page.waitForFunction((name) => performance.getEntriesByName(name).length > 0, mark);
    await passed('code/didStartWorkbench');
    // Until then the palette lacks the extension's commands.
    await passed('code/didLoadExtensions');
    return new Workbench({ page, server, browserErrors, timeout, close });
  } catch (error) {
    await close();
    throw error;
  }
}

const trustSettings = (restricted) =>
  restricted
    ? { 'security.workspace.trust.startupPrompt': 'never', 'security.workspace.trust.banner': 'never' }
    : { 'security.workspace.trust.enabled': false };

/** Uncaught exceptions and console errors of the page, which carry the extension's own. */
function collectErrors(page) {
  const errors = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && !knownErrors.test(message.text())) errors.push(message.text());
  });
  page.on('response', (response) => {
    if (response.status() >= 400 && !absentFiles.test(response.url())) {
      errors.push(`${response.status()} ${response.url()}`);
    }
  });
  return errors;
}

/**
 * Cleans up when the process ends, or is told to end, with a workbench open.
 *
 * @param {() => void} clean
 * @returns {() => void} what calls this off
 */
function cleanOnExit(clean) {
  const signals = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 };
  const end = (signal) => process.exit(signals[signal]);
  process.once('exit', clean);
  for (const signal of Object.keys(signals)) process.once(signal, end);
  return () => {
    process.removeListener('exit', clean);
    for (const signal of Object.keys(signals)) process.removeListener(signal, end);
  };
}
