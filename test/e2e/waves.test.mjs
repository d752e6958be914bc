/** The view of waveforms: what it shows, how it is used with the keyboard, that it follows the text, and saving. */
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { accessibilityProblems } from './harness/accessibility.mjs';
import { webviewWith } from './harness/webview.mjs';
import { picture, scenario, stores, useSettings, workbenchFolder } from './scenario.mjs';

/** Opens the view of the bus on a line, and waits for its plot. */
async function openWaves(workbench, file, line) {
  await workbench.openFile(file);
  await workbench.goTo({ line, column: 8 });
  await workbench.command('Fieldpair: Show Waveforms of This Bus');
  const view = await webviewWith(workbench.page, '.picture svg');
  await view.locator('.picture svg').waitFor();
  return view;
}

const control = (view, label) =>
  view.locator('.labelled', { has: view.locator('span', { hasText: label }) }).locator('select, input');

for (const [name, theme] of [
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
  ['high-contrast', 'Default High Contrast'],
  ['high-contrast-light', 'Default High Contrast Light'],
]) {
  scenario(`shows waveforms that everybody can read, ${name}`, async (workbench) => {
    useSettings({ 'workbench.colorTheme': theme });
    const view = await openWaves(workbench, 'trial/wave.pair', 4);
    await control(view, 'Compare with').selectOption({ index: 1 });
    await view.locator('.summary', { hasText: 'Changed' }).waitFor();
    await picture(workbench, `waves-${name}`);
    for (const choice of ['One edge', 'Eye']) {
      await view.locator('.view', { hasText: choice }).click();
      await view
        .locator('.picture svg title')
        .filter({ hasText: choice === 'Eye' ? 'laid over' : 'one edge' })
        .first()
        .waitFor({ state: 'attached' });
      await picture(workbench, `waves-${name}-${choice.replace(' ', '-').toLowerCase()}`);
    }
    assert.deepEqual(await accessibilityProblems(view, workbenchFolder), []);
    useSettings({});
    await view.locator('.view', { hasText: 'Bits' }).click();
    await control(view, 'Compare with').selectOption({ index: 0 });
  });
}

scenario('reads the lines out under a cursor that keys move', async (workbench) => {
  const view = await openWaves(workbench, 'trial/wave.pair', 4);
  const cursor = view.getByRole('slider', { name: 'Cursor over time' });
  await cursor.focus();
  await cursor.press('End');
  const atEnd = await cursor.getAttribute('aria-valuetext');
  assert.match(atEnd, /^[\d.]+ us; head\.field1 .?\d\.\d{3} V; .*probeA .?\d+\.\d{3} V/);
  await cursor.press('Shift+ArrowLeft');
  assert.notEqual(await cursor.getAttribute('aria-valuetext'), atEnd);
  await view.locator('.readout', { hasText: 'probeA' }).waitFor();
  await picture(workbench, 'waves-cursor');
  const axis = () => view.locator('.picture svg').evaluate((svg) => svg.textContent);
  const whole = await axis();
  for (let presses = 0; presses < 3; presses++) {
    const before = await axis();
    await cursor.press('+');
    await view.waitForFunction((text) => document.querySelector('.picture svg').textContent !== text, before);
  }
  await picture(workbench, 'waves-nearer');
  await cursor.press('0');
  await view.waitForFunction((text) => document.querySelector('.picture svg').textContent === text, whole);
  await cursor.press('Escape');
  await view.locator('.readout').waitFor({ state: 'hidden' });
});

scenario('opens waveforms from the summary of a bus, and follows the text', async (workbench) => {
  await workbench.openFile('trial/wave.pair');
  await workbench.page.locator('.codelens-decoration a', { hasText: 'Waveforms' }).first().click();
  const view = await webviewWith(workbench.page, '.picture svg');
  await view.locator('h1', { hasText: 'waves, bus cases' }).waitFor();
  const before = await view.locator('.summary').innerText();
  await workbench.command('View: Focus First Editor Group');
  await workbench.goTo({ line: 6, column: 5 });
  await workbench.page.keyboard.press('Delete');
  await workbench.page.keyboard.type('90');
  await view.locator('.summary').filter({ hasNotText: before }).waitFor();
});

scenario('shows what a fault does, remembers it for the bus, and says what is unknown', async (workbench) => {
  const view = await openWaves(workbench, 'trial/wave.pair', 4);
  await control(view, 'What if').selectOption('open from caseA to probeA');
  await view.locator('.summary', { hasText: 'Cut off from the driver: probeA' }).waitFor();
  await picture(workbench, 'waves-fault');
  await control(view, 'Rate').fill('fast');
  await control(view, 'Rate').press('Enter');
  await view.locator('.problems', { hasText: 'is no number with a unit' }).waitFor();
  await workbench.command('View: Close All Editors');
  const again = await openWaves(workbench, 'trial/wave.pair', 4);
  await again.locator('.faults', { hasText: 'open from caseA to probeA' }).waitFor();
  await again.getByRole('button', { name: 'Take away: open from caseA to probeA' }).click();
  await control(again, 'Rate').fill('');
  await control(again, 'Rate').press('Enter');
  await again.locator('.problems').waitFor({ state: 'hidden' });
});

scenario('tells what the bus allows, and what would mend it, as the text changes', async (workbench) => {
  const view = await openWaves(workbench, 'trial/wave.pair', 4);
  await view.locator('.advice li', { hasText: 'is the fastest' }).waitFor();
  await view.locator('.advice li', { hasText: 'at the least cost is one terminator of 120 ohm at probeA' }).waitFor();
  await view.locator('.advice').scrollIntoViewIfNeeded();
  await picture(workbench, 'waves-advice');
  await workbench.command('View: Focus First Editor Group');
  await workbench.goTo({ line: 7, column: 39 });
  await workbench.page.keyboard.press('End');
  await workbench.page.keyboard.type(' terminate resistor 120 ohm');
  await view.locator('.advice li', { hasText: 'it may grow by' }).waitFor();
  await workbench.command('File: Revert File');
});

scenario('leads from a landing to its place in the text, and takes a fault in words', async (workbench) => {
  const view = await openWaves(workbench, 'trial/wave.pair', 4);
  await control(view, 'What if').selectOption({ label: 'another, in words…' });
  await control(view, 'The fault in words').fill('short 2 ohm from caseA to probeA at 30 %');
  await control(view, 'The fault in words').press('Enter');
  await view.locator('.summary', { hasText: 'Bits may be misread' }).waitFor();
  await picture(workbench, 'waves-short');
  await view.getByRole('button', { name: 'Take away: short 2 ohm' }).click();
  await view.getByRole('button', { name: 'probeA', exact: true }).click();
  await workbench.cursor(({ line }) => line === 7);
});

scenario('saves the picture', async (workbench) => {
  const view = await openWaves(workbench, 'trial/wave.pair', 4);
  await view.getByRole('button', { name: 'Save picture' }).click();
  const proposed = 'waves-cases-pattern.svg';
  const input = workbench.page.locator('.quick-input-widget input.input');
  await workbench.page.waitForFunction(
    (name) => document.querySelector('.quick-input-widget input.input')?.value.endsWith(name),
    proposed,
  );
  // The dialog takes no answer while it looks at its folder.
  for (let tries = 0; tries < 10 && (await input.isVisible()); tries++) {
    await input.press('Enter');
    await workbench.page.waitForTimeout(500);
  }
  const target = join(stores, 'trial', proposed);
  for (let waited = 0; waited < 100 && !existsSync(target); waited++) await workbench.page.waitForTimeout(100);
  assert.match(readFileSync(target, 'utf8'), /^<svg [^>]*>.*waves, bus cases.*<\/svg>\n$/s);
});
