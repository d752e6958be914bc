/** What is shown while a store is read: hover, hints, code lens, colours, outline, and where things are declared. */
import assert from 'node:assert/strict';
import { accessibilityProblems } from './harness/accessibility.mjs';
import { overhang, webviewWith } from './harness/webview.mjs';
import { picture, scenario, workbenchFolder } from './scenario.mjs';

scenario('shows length and resistance of a run on hover', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const text = await workbench.hover({ line: 9, column: 6 }, (shown) => /ohm/.test(shown));
  await picture(workbench, 'hover-run');
  assert.match(text, /38 ft/);
  // 38 ft = 11.58 m, out and back through 52.5 ohm/km.
  const values = [...text.matchAll(/(\d+(?:\.\d+)?) ohm/g)].map(([, value]) => Number(value));
  const expected = 2 * 38 * 0.3048 * 0.0525;
  assert.ok(
    values.some((value) => Math.abs(value / expected - 1) < 0.01),
    `${expected.toFixed(3)} ohm out and back in: ${text}`,
  );
});

scenario('shows the meter reading and the neighbours of a landing on hover', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const text = await workbench.hover({ line: 10, column: 15 }, (shown) => /ohm/.test(shown));
  await picture(workbench, 'hover-landing');
  assert.match(text, /address 2/i);
  // Two terminators of 120 ohm side by side.
  assert.match(text, /\b(59|60|61)(\.\d+)? ohm/);
});

scenario('shows the documentation of a device on hover', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.hover({ line: 9, column: 26 }, (shown) => shown.includes('Has a terminator switch of its own.'));
  await picture(workbench, 'hover-device');
});

scenario('tells of a statement on its keyword, and opens the language reference where it does', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  const text = await workbench.hover({ line: 8, column: 24 }, (shown) => /terminate \(switch/.test(shown));
  await picture(workbench, 'hover-keyword');
  assert.match(text, /A terminator is on here/);
  await workbench.page.locator('.monaco-hover a', { hasText: 'Language reference' }).click();
  const frame = await webviewWith(workbench.page, 'h1');
  // The page has been scrolled to what the hover told of.
  await frame.waitForFunction(() => {
    const heading = [...document.querySelectorAll('h3')].find(({ textContent }) => textContent === 'terminate');
    const top = heading?.getBoundingClientRect().top ?? -1;
    return -20 < top && top < innerHeight / 2;
  });
  await picture(workbench, 'language-reference');
});

scenario('opens the language reference by its command', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.command('Fieldpair: Open Language Reference');
  const frame = await webviewWith(workbench.page, 'h1');
  await frame.getByRole('heading', { name: 'The .pair language' }).waitFor();
});

scenario('shows a summary above each bus, and running distances in the text', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('100 ft · 4 landings')));
  // 38 ft + 22 ft + 40 ft along the cable.
  const text = await workbench.editorText((shown) => /60 ft/.test(shown) && /100 ft/.test(shown));
  const line = (part) => text.split('\n').find((shown) => shown.includes(part)) ?? '';
  assert.match(line('to caseB'), /60 ft/);
  assert.match(line('to caseC'), /100 ft/);
  await picture(workbench, 'hints-and-lens');
});

scenario('opens the figures of a bus from its summary, and keeps them up to date', async (workbench) => {
  await workbench.openFile('trial/measured.pair');
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('81 ft')));
  await workbench.page.locator('.codelens-decoration a', { hasText: '81 ft' }).click();
  await workbench.page.locator('.tab', { hasText: 'Figures: measured.pair' }).waitFor();
  const frame = await webviewWith(workbench.page, 'table.landings tbody tr');
  const row = (name) => frame.locator('table.landings tr', { has: frame.getByRole('button', { name, exact: true }) });
  await row('caseB').filter({ hasText: '78 ft' }).waitFor();
  await picture(workbench, 'figures');
  // Beside its text in a window of 1280 pixels, and in light and dark.
  assert.ok((await overhang(frame)) <= 0, 'the page has to be scrolled sideways');
  assert.deepEqual(await accessibilityProblems(frame, workbenchFolder), []);
  const kept = await row('caseA').locator('td').nth(1).elementHandle();
  await workbench.command('View: Focus First Editor Group');
  await workbench.goTo({ line: 1, column: 1 });
  await workbench.page.keyboard.press('Enter');
  await workbench.goTo({ line: 9, column: 5 });
  for (let presses = 0; presses < 2; presses++) await workbench.page.keyboard.press('Delete');
  await workbench.page.keyboard.type('90');
  await row('caseB').filter({ hasText: '128 ft' }).waitFor();
  assert.ok(await kept.evaluate((element) => element.isConnected), 'what has not changed stays');
  await row('caseA').getByRole('button').click();
  await workbench.cursor(({ line }) => line === 7);
});

scenario('goes from a device to its declaration in the catalogue', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.goTo({ line: 9, column: 26 });
  await workbench.page.keyboard.press('F12');
  await workbench.page.locator('.tab.active', { hasText: 'catalogue.pair' }).waitFor();
  await workbench.cursor(({ line }) => line === 34);
});

scenario('finds all references of a node', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.goTo({ line: 5, column: 9 });
  await workbench.page.keyboard.press('Shift+F12');
  const peek = workbench.page.locator('.peekview-widget .ref-tree');
  await peek
    .locator('.monaco-list-row .label, .monaco-list-row')
    .filter({ hasText: 'from head.field1' })
    .first()
    .waitFor();
  await picture(workbench, 'references');
});

scenario('outlines stores, nodes and buses', async (workbench) => {
  await workbench.openFile('trial/sound.pair');
  await workbench.command('Explorer: Focus on Outline View');
  const rows = '.outline-pane .monaco-list-row';
  const names = await workbench.texts(rows, (all) =>
    ['sound', 'head', 'cases'].every((name) => all.some((row) => row.includes(name))),
  );
  assert.ok(names.length >= 3);
  await picture(workbench, 'outline');
});
