/**
 * Makes the pictures of the README out of the running product, into extension/images: `npm run e2e -- pictures`.
 * They are looked at before they are committed.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { webviewWith } from './harness/webview.mjs';
import { scenarioApart } from './scenario.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'fieldpair-'));
process.once('exit', () => rmSync(scratch, { recursive: true, force: true }));

/** The samples, and the trial bus whose waveforms are shown. */
function workspace() {
  const folder = join(scratch, 'stores');
  cpSync(join(root, 'samples'), folder, { recursive: true, filter: (path) => !path.includes('odd') });
  for (const name of ['catalogue', 'wave']) {
    cpSync(join(root, `test/e2e/trial/${name}.pair`), join(folder, `quick/${name}.pair`));
  }
  return folder;
}

const viewport = { width: 1280, height: 800 };
const saved = (workbench, name) => workbench.screenshot(join(root, `extension/images/${name}.png`));

function pictures(name, steps) {
  scenarioApart(`takes the pictures of ${name}`, { workspace: workspace(), viewport }, steps);
}

pictures('text, hovers and fixes', async (workbench) => {
  await workbench.openFile('as-found/store.pair');
  await workbench.problems((all) => all.length > 20);
  await workbench.page
    .locator('.markers-panel-action-filter-container input, .viewpane-filter input')
    .first()
    .fill('**/store.pair');
  await workbench.command('View: Focus First Editor Group');
  await workbench.goTo({ line: 1, column: 1 });
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('132 ft')));
  await saved(workbench, 'hints');
  await workbench.quickFixes({ line: 25, column: 17 }, (titles) => titles.length > 1, { keep: true });
  await saved(workbench, 'light-bulb');
  await workbench.page.keyboard.press('Escape');
  await workbench.command('View: Toggle Panel Visibility');
  await workbench.command('View: Close All Editors');
  await workbench.openFile('small/store.pair');
  await workbench.texts('.codelens-decoration', (all) => all.some((text) => text.includes('landings')));
  await workbench.hover({ line: 16, column: 15 }, (shown) => /ohm/.test(shown));
  await saved(workbench, 'hover');
});

pictures('the drawing', async (workbench) => {
  await workbench.command('View: Toggle Primary Side Bar Visibility');
  await workbench.page.setViewportSize({ width: 1280, height: 880 });
  for (const [name, path, place] of [
    // Where three cables meet, so that its branches are joined by a line.
    ['drawing', 'as-found/store.pair', { line: 37, column: 14 }],
    ['drawing-areas', 'small/store.pair', { line: 12, column: 10 }],
  ]) {
    await workbench.openFile(path);
    await workbench.goTo(place);
    await workbench.command('Fieldpair: Draw This Store');
    const frame = await webviewWith(workbench.page, 'svg .landing');
    await workbench.page.waitForTimeout(1000);
    await frame.getByRole('button', { name: 'Smaller' }).press('Enter');
    await workbench.command('View: Focus First Editor Group');
    await workbench.goTo({ line: 1, column: 1 });
    await workbench.goTo(place);
    await workbench.page.mouse.move(20, 500);
    await workbench.page.waitForTimeout(1500);
    await saved(workbench, name);
    await workbench.command('View: Close All Editors');
  }
});

pictures('waveforms', async (workbench) => {
  await workbench.page.setViewportSize({ width: 1280, height: 880 });
  await workbench.command('View: Toggle Primary Side Bar Visibility');
  await workbench.openFile('quick/wave.pair');
  await workbench.goTo({ line: 4, column: 8 });
  await workbench.command('Fieldpair: Show Waveforms of This Bus');
  const view = await webviewWith(workbench.page, '.picture svg');
  await view.locator('.view', { hasText: 'One edge' }).click();
  await view
    .locator('.labelled', { has: view.locator('span', { hasText: 'Compare with' }) })
    .locator('select')
    .selectOption({ index: 1 });
  await view.locator('.summary', { hasText: 'Changed' }).waitFor();
  await workbench.page.waitForTimeout(500);
  await saved(workbench, 'waves');
});

/** Two pages of the packet of the full-size store, side by side at the size of paper on a screen. */
pictures('the packet', async (workbench) => {
  const program = join(root, 'server/bin/fieldpair.js');
  const date = ['--date', '2026-03-14', '--revision', 'abc1234'];
  const command = ['packet', join(root, 'samples/full'), '--out', scratch, '--format', 'pdf', ...date];
  execFileSync(process.execPath, [program, ...command]);
  const file = execFileSync('find', [scratch, '-name', '*.pdf'], { encoding: 'utf8' }).trim();
  const pages = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f');
  const pageWith = (...texts) => pages.findIndex((page) => texts.every((text) => page.includes(text))) + 1;
  const sheet = await workbench.page
    .context()
    .browser()
    .newPage({ viewport: { width: 1224, height: 792 } });
  for (const [name, ...numbers] of [
    [
      'packet-landings',
      pageWith('Landing schedule: Medium-temperature cases'),
      pageWith('Addresses of Medium-temperature cases', 'meatAir'),
    ],
    [
      'packet-commissioning',
      pageWith('One-line diagram: Medium-temperature cases'),
      pageWith('Commissioning: Medium-temperature cases'),
    ],
  ]) {
    const images = numbers.map((number) => {
      execFileSync('pdftoppm', [
        '-r',
        '144',
        '-png',
        '-singlefile',
        '-f',
        number,
        '-l',
        number,
        file,
        join(scratch, 'page'),
      ]);
      return `<img src="data:image/png;base64,${readFileSync(join(scratch, 'page.png')).toString('base64')}">`;
    });
    await sheet.setContent(`<style>body { margin: 0; display: flex } img { width: 612px }</style>${images.join('')}`);
    await sheet.screenshot({ path: join(root, `extension/images/${name}.png`) });
  }
  await sheet.close();
});
