/** Findings in the Problems panel, the light bulb, and all safe fixes at once. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { picture, scenario, stores } from './scenario.mjs';

const inFile = (problems, name) => problems.filter(({ file }) => file.endsWith(`/${name}`));

scenario('lists the findings of a store with as-found wiring', async (workbench) => {
  await workbench.openFile('as-found/store.pair');
  const problems = await workbench.problems((all) => inFile(all, 'store.pair').length >= 12);
  const found = inFile(problems, 'store.pair');
  const rules = new Set(found.map(({ code }) => code));
  assert.ok(rules.size >= 10, `a dozen different faults, but only ${[...rules].join(', ')}`);
  for (const { message, source, code } of found) {
    assert.match(source, /fieldpair/i);
    assert.match(code, /^[a-z][a-z0-9-]+$/);
    assert.ok(message.length > 20, message);
  }
  await picture(workbench, 'findings');
});

scenario('inserts a missing terminator by the light bulb, and the finding goes', async (workbench) => {
  await workbench.openFile('trial/unterminated.pair');
  const before = inFile(
    await workbench.problems((all) => inFile(all, 'unterminated.pair').length > 0),
    'unterminated.pair',
  );
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
  const after = await workbench.problems((all) => inFile(all, 'unterminated.pair').length < before.length);
  assert.deepEqual(
    inFile(after, 'unterminated.pair')
      .map(({ code }) => code)
      .sort(),
    before
      .map(({ code }) => code)
      .filter((code) => code !== 'end-unterminated')
      .sort(),
  );
  await workbench.save();
  assert.match(readFileSync(join(stores, 'trial/unterminated.pair'), 'utf8'), /terminate resistor 120 ohm/);
});

scenario('fixes all that is safe by one command', async (workbench) => {
  await workbench.openFile('trial/safe.pair');
  await workbench.problems(
    (all) => inFile(all, 'safe.pair').filter(({ code }) => code === 'end-unterminated').length === 3,
  );
  await workbench.command('Fieldpair: Fix All Safe Findings');
  const text = await workbench.editorText((shown) => (shown.match(/terminate/g) ?? []).length === 4);
  // By the switch where the device has one, else by a resistor.
  assert.match(text, /probeA : TrialProbe address 2 terminate resistor 120 ohm/);
  assert.match(text, /from head\.field2 terminate switch/);
  assert.match(text, /caseC : TrialBoard address 2 terminate switch/);
  await workbench.problems((all) => inFile(all, 'safe.pair').every(({ code }) => code !== 'end-unterminated'));
  await picture(workbench, 'all-safe-fixes');
});

scenario('hears of files that other programs change', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const count = (all) => inFile(all, 'sound.pair').filter(({ code }) => code === 'end-unterminated').length;
  await workbench.problems((all) => count(all) === 0);
  const path = join(stores, 'trial/sound.pair');
  const text = readFileSync(path, 'utf8');
  writeFileSync(path, text.replace('address 5 terminate switch', 'address 5'));
  await workbench.problems((all) => count(all) === 1);
  writeFileSync(path, text);
  await workbench.problems((all) => count(all) === 0);
});
