/** Findings in the Problems panel, the light bulb, and all safe fixes at once. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { picture, scenario, stores } from './scenario.mjs';

scenario('lists the findings of a store with as-found wiring, as the command line does', async (workbench) => {
  const asFound = ({ file }) => file.startsWith(join(stores, 'as-found/'));
  const listed = checkInTerminal('as-found');
  assert.ok(new Set(listed.map(({ rule }) => rule)).size >= 12, 'a dozen different faults');
  await workbench.openFile('as-found/store.pair');
  const problems = await workbench.problems((all) => all.filter(asFound).length === listed.length);
  await picture(workbench, 'findings');
  const shown = problems.filter(asFound).map(({ file, severity, message, code, line, column }) => {
    return { file: relative(stores, file), severity, message, rule: code, line, column };
  });
  assert.deepEqual(sorted(shown), sorted(listed));
  assert.ok(problems.every(({ source }) => source === 'fieldpair'));
});

/** What `fieldpair check` says of a folder of the workspace. */
function checkInTerminal(folder) {
  const program = fileURLToPath(new URL('../../server/bin/fieldpair.js', import.meta.url));
  const command = [program, 'check', folder, '--format', 'json'];
  // It ends with status 1 when it finds an error.
  const { stdout } = spawnSync(process.execPath, command, { cwd: stores, encoding: 'utf8' });
  return JSON.parse(stdout).findings.map(({ file, severity, message, rule, line, column }) => {
    return { file, severity, message, rule, line, column };
  });
}

const sorted = (findings) => findings.map((finding) => JSON.stringify(finding)).sort();

scenario('inserts a missing terminator by the light bulb, and the finding goes', async (workbench) => {
  await workbench.openFile('trial/unterminated.pair');
  const before = await workbench.problemsOf('unterminated.pair', (all) => all.length > 0);
  const finding = before.find(({ code }) => code === 'end-unterminated');
  assert.ok(finding, `end-unterminated among ${JSON.stringify(before)}`);
  assert.match(finding.message, /probeA/);

  const titles = await workbench.quickFixes(finding, (all) => all.some((title) => /120 ohm/.test(title)), {
    keep: true,
  });
  await picture(workbench, 'light-bulb');
  await workbench.page.keyboard.press('Escape');
  await workbench.quickFix(
    titles.find((title) => /120 ohm/.test(title)),
    finding,
  );
  await workbench.editorText((text) => /to probeA : TrialProbe address 2 terminate resistor 120 ohm/.test(text));
  const after = await workbench.problemsOf('unterminated.pair', (all) => all.length < before.length);
  assert.deepEqual(
    after.map(({ code }) => code).sort(),
    before
      .map(({ code }) => code)
      .filter((code) => code !== 'end-unterminated')
      .sort(),
  );
  await workbench.save();
  assert.match(readFileSync(join(stores, 'trial/unterminated.pair'), 'utf8'), /terminate resistor 120 ohm/);
});

scenario('finds a margin that a rate makes thin once typing pauses, and loses it with the fix', async (workbench) => {
  await workbench.openFile('trial/thin.pair');
  const told = (all) => all.filter(({ code }) => code === 'margin-low');
  await workbench.problemsOf('thin.pair', (all) => told(all).length === 0);
  const lines = readFileSync(join(stores, 'trial/thin.pair'), 'utf8').split('\n');
  const line = lines.findIndex((one) => one.includes(' 19200 ')) + 1;
  await workbench.goTo({ line, column: lines[line - 1].indexOf('19200') + 1 });
  for (let digit = 0; digit < 5; digit++) await workbench.page.keyboard.press('Delete');
  await workbench.page.keyboard.type('115200');
  const [finding] = told(await workbench.problemsOf('thin.pair', (all) => told(all).length === 1));
  assert.match(finding.message, /^simulated at 115\.2 kbit\/s .* 200 mV is wanted: at [\d,]+ bit\/s it would be /);
  await picture(workbench, 'margin-low');
  const titles = await workbench.quickFixes(finding, (all) => all.some((title) => /^Run at /.test(title)));
  await workbench.quickFix(
    titles.find((title) => /^Run at /.test(title)),
    finding,
  );
  await workbench.editorText((text) => !text.includes('115200'));
  await workbench.problemsOf('thin.pair', (all) => told(all).length === 0);
});

scenario('opens the page of a rule from its finding', async (workbench) => {
  await workbench.openFile('trial/safe.pair');
  await workbench.problemsOf('safe.pair', (all) => all.length > 0);
  const link = workbench.page.locator('.markers-panel a', { hasText: /^[a-z]+(-[a-z]+)+$/ }).first();
  const rule = await link.innerText();
  await link.click({ modifiers: ['Control'] });
  await workbench.page.locator('.tab', { hasText: `${rule}.md` }).waitFor();
  // Rendered, not as source.
  const page = workbench.page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
  await page.getByRole('heading', { name: rule }).waitFor();
  await picture(workbench, 'rule-page');
});

scenario('fixes all that is safe by one command, and nothing else', async (workbench) => {
  await workbench.openFile('trial/safe.pair');
  const stale = (all) => all.filter(({ code }) => code === 'waiver-stale');
  await workbench.problemsOf('safe.pair', (all) => stale(all).length === 2);
  await picture(workbench, 'before-safe-fixes');
  await workbench.command('Fieldpair: Fix All Safe Findings');
  const text = await workbench.editorText((shown) => !shown.includes('waive'));
  assert.match(text, /from head.field1 : TrialHead terminate switch/);
  assert.doesNotMatch(text, /probeA .*terminate/, 'a resistor has to be bought and landed');
  assert.match(text, /address 1 crossed/, 'that somebody has swapped the wires back cannot be known here');
  const left = await workbench.problemsOf('safe.pair', (all) => stale(all).length === 0);
  assert.deepEqual(left.map(({ code }) => code).sort(), ['end-unterminated', 'polarity-crossed']);
  await picture(workbench, 'after-safe-fixes');
});

scenario('hears of files that other programs change', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const count = (all) => all.filter(({ code }) => code === 'end-unterminated').length;
  await workbench.problemsOf('sound.pair', (all) => count(all) === 0);
  const path = join(stores, 'trial/sound.pair');
  const text = readFileSync(path, 'utf8');
  writeFileSync(path, text.replace('address 5 terminate switch', 'address 5'));
  await workbench.problemsOf('sound.pair', (all) => count(all) === 1);
  writeFileSync(path, text);
  await workbench.problemsOf('sound.pair', (all) => count(all) === 0);
});
