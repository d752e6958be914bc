/** The extension around the language server: commands, status, settings, log, restart, untrusted workspaces. */
import assert from 'node:assert/strict';
import { picture, scenario, scenarioApart } from './scenario.mjs';

const ofStore = (name) => (all) => all.some(({ file, code }) => file.endsWith(name) && code === 'end-unterminated');

async function statusText(workbench, until) {
  await workbench.page.mouse.move(300, 300);
  await workbench.page.locator('#status\\.languageStatus').hover();
  return workbench.texts('.hover-language-status .element', until);
}

scenario('offers its commands', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const titles = await workbench.offeredCommands('Fieldpair: ', (all) => all.length >= 5);
  for (const title of [
    'Fieldpair: Check Whole Workspace',
    'Fieldpair: Fix All Safe Findings',
    'Fieldpair: Show Figures of This Bus',
    'Fieldpair: Restart Language Server',
    'Fieldpair: Show Log',
  ]) {
    assert.ok(titles.includes(title), `${title} among ${titles.join(', ')}`);
  }
});

scenario('tells in the status bar what the last check found, when and how fast', async (workbench) => {
  await workbench.openFile('trial/safe.pair');
  await workbench.problems(ofStore('safe.pair'));
  const texts = await statusText(workbench, (all) => all.some((text) => /\d+ errors?/.test(text)));
  await picture(workbench, 'status');
  assert.match(texts.join('\n'), /\d+ files?, \d+ stores?; checked at \S+.* in .*\d+(\.\d+)? m?s/);
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
  await workbench.changeSettings({ 'fieldpair.lengthUnit': 'm' });
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => /30(\.\d+)? m\b/.test(text)));
  await picture(workbench, 'metres');
  await workbench.changeSettings({ 'fieldpair.codeLens': false, 'fieldpair.hints.distance': false });
  await workbench.texts('.codelens-decoration', (all) => all.length === 0);
  await workbench.editorText((text) => text.split('\n').some((line) => /caseB : TrialBoard address 2\s*$/.test(line)));
  await workbench.changeSettings({});
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('100 ft')));
});

scenario('takes severities of rules from the settings', async (workbench) => {
  await workbench.openFile('trial/safe.pair');
  await workbench.problems(ofStore('safe.pair'));
  await workbench.changeSettings({ 'fieldpair.severity': { 'end-unterminated': 'off' } });
  await workbench.problems((all) => !ofStore('safe.pair')(all));
  await workbench.changeSettings({ 'fieldpair.severity': { 'end-unterminated': 'info' } });
  await workbench.problems((all) =>
    all.some(({ code, severity }) => code === 'end-unterminated' && severity === 'info'),
  );
  await workbench.changeSettings({});
  await workbench.problems((all) =>
    all.some(({ code, severity }) => code === 'end-unterminated' && severity === 'error'),
  );
});

scenario('restarts the language server, and checks again', async (workbench) => {
  await workbench.openFile('trial/safe.pair');
  await workbench.problems(ofStore('safe.pair'));
  await workbench.command('Fieldpair: Restart Language Server');
  await workbench.problems((all) => !ofStore('safe.pair')(all));
  await workbench.problems(ofStore('safe.pair'));
  await workbench.command('Fieldpair: Show Log');
  await workbench.page
    .locator('.output-view-container, .panel .view-lines')
    .filter({ hasText: 'language server runs' })
    .first()
    .waitFor();
  await picture(workbench, 'log');
});

scenarioApart('works fully in a workspace that is not trusted', { restricted: true }, async (workbench) => {
  await workbench.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
  await workbench.openFile('trial/safe.pair');
  await workbench.problems(ofStore('safe.pair'));
  await picture(workbench, 'restricted');
});
