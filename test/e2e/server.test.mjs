/** The extension around the language server: commands, status, settings, log, restart, untrusted workspaces. */
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readUntil } from './harness/reading.mjs';
import { copyOfStores, picture, scenario, scenarioApart, useSettings } from './scenario.mjs';

const isUnterminated = (all) => all.some(({ code }) => code === 'end-unterminated');

async function statusText(workbench, until) {
  await workbench.page.mouse.move(300, 300);
  await workbench.page.locator('#status\\.languageStatus').hover();
  return workbench.texts('.hover-language-status .element', until);
}

scenario('offers its commands', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const expected = [
    'Fieldpair: Check Whole Workspace',
    'Fieldpair: Fix All Safe Findings',
    'Fieldpair: Show Figures of This Bus',
    'Fieldpair: Open Language Reference',
    'Fieldpair: Restart Language Server',
    'Fieldpair: Show Log',
  ];
  // Those that need the extension to run are offered once it does.
  await workbench.offeredCommands('Fieldpair: ', (titles) => expected.every((title) => titles.includes(title)));
});

scenario('tells in the status bar what the last check found, when and how fast', async (workbench) => {
  await workbench.openFile('trial/typing.pair');
  await workbench.problemsOf('typing.pair', isUnterminated);
  const texts = await statusText(workbench, (all) => all.some((text) => /\d+ errors?/.test(text)));
  await picture(workbench, 'status');
  assert.match(texts.join('\n'), /\d+ files? at \S+.* in .*\d+(\.\d+)? m?s/);
});

scenario('checks the whole workspace', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.command('Fieldpair: Check Whole Workspace');
  const messages = await workbench.notifications((all) => all.some((text) => text.includes('checked:')));
  await picture(workbench, 'check-workspace');
  const [, files, stores, buses, errors] =
    /([\d,]+) files?, (\d+) stores?, (\d+) bus(?:es)? checked: (\d+) errors?/.exec(messages.join('\n')) ?? [];
  assert.ok(
    Number(files) >= 10 && Number(stores) >= 6 && Number(buses) >= 7 && Number(errors) > 3,
    messages.join('\n'),
  );
});

scenario('takes up changed settings at once', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('100 ft')));
  useSettings({ 'fieldpair.lengthUnit': 'm' });
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => /30(\.\d+)? m\b/.test(text)));
  await picture(workbench, 'metres');
  useSettings({ 'fieldpair.codeLens': false, 'fieldpair.hints.distance': false });
  await workbench.texts('.codelens-decoration', (all) => all.length === 0);
  await workbench.editorText((text) => text.split('\n').some((line) => /caseB : TrialBoard address 2\s*$/.test(line)));
  useSettings({});
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('100 ft')));
});

scenario('takes severities of rules from the settings', async (workbench) => {
  await workbench.openFile('trial/typing.pair');
  await workbench.problemsOf('typing.pair', isUnterminated);
  useSettings({ 'fieldpair.severity': { 'end-unterminated': 'off' } });
  await workbench.problemsOf('typing.pair', (all) => !isUnterminated(all));
  useSettings({ 'fieldpair.severity': { 'end-unterminated': 'info' } });
  await workbench.problemsOf('typing.pair', (all) =>
    all.some(({ code, severity }) => code === 'end-unterminated' && severity === 'info'),
  );
  useSettings({});
  await workbench.problemsOf('typing.pair', (all) =>
    all.some(({ code, severity }) => code === 'end-unterminated' && severity === 'error'),
  );
});

/** How often the log says that the server has started. */
async function starts(workbench) {
  const texts = Object.values(await workbench.logs(/Fieldpair/));
  return texts.join('\n').split('The language server runs').length - 1;
}

scenario('restarts the language server, and checks again', async (workbench) => {
  await workbench.openFile('trial/unterminated.pair');
  await workbench.problemsOf('typing.pair', isUnterminated);
  const before = await starts(workbench);
  await workbench.command('Fieldpair: Restart Language Server');
  await readUntil(
    'the starts',
    () => starts(workbench),
    (count) => count > before,
    30_000,
  );
  await workbench.problemsOf('typing.pair', isUnterminated);
  await workbench.command('Fieldpair: Show Log');
  const { page } = workbench;
  await readUntil(
    'the log',
    async () => {
      // The view may come with what another one was filtered by.
      await page.locator('.panel .viewpane-filter input:visible').first().fill('');
      return (await page.locator('.panel .view-lines').allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
    },
    (text) => text.includes('language server runs'),
    30_000,
  );
  await picture(workbench, 'log');
  await workbench.command('Problems: Focus on Problems View');
});

scenario('goes on after a crash of the language server', async (workbench) => {
  await workbench.openFile('trial/typing.pair');
  await workbench.problemsOf('typing.pair', isUnterminated);
  const killed = await workbench.crash(/dist\/server\.cjs/);
  assert.equal(killed.length, 1);
  await workbench.hover({ line: 8, column: 6 }, (text) => text.includes('38 ft'));
  await workbench.problemsOf('typing.pair', isUnterminated);
  assert.deepEqual(await workbench.notifications(), []);
});

scenarioApart('works fully in a workspace that is not trusted', { restricted: true }, async (workbench) => {
  await workbench.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
  await workbench.openFile('trial/typing.pair');
  await workbench.problemsOf('typing.pair', isUnterminated);
  await picture(workbench, 'restricted');
});

scenarioApart(
  'serves several folders in one window',
  { workspace: workspaceOf('as-found', 'catalogue', 'trial') },
  async (workbench) => {
    await workbench.openFile('typing.pair');
    // Findings of a folder with no file open come too.
    const inFolder = (all, name) => all.some(({ file }) => file.includes(`/${name}/`));
    await workbench.problems((all) => inFolder(all, 'trial') && inFolder(all, 'as-found'));
    await picture(workbench, 'several-folders');
    assert.equal((await workbench.crash(/dist\/server\.cjs/)).length, 1, 'one server for all folders');
  },
);

/** A workspace file that names folders of a copy of the stores. */
function workspaceOf(...folders) {
  const path = join(copyOfStores(), 'stores.code-workspace');
  writeFileSync(path, JSON.stringify({ folders: folders.map((name) => ({ path: name })) }));
  return path;
}
