/** The installer's packet as people meet it: in the editor, on a phone, on paper. */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { accessibilityProblems } from './harness/accessibility.mjs';
import { readUntil } from './harness/reading.mjs';
import { webviewWith } from './harness/webview.mjs';
import { picture, scenario, screenshots, stores, workbenchFolder } from './scenario.mjs';

const program = fileURLToPath(new URL('../../server/bin/fieldpair.js', import.meta.url));
const run = (tool, ...args) => execFileSync(tool, args, { encoding: 'utf8', maxBuffer: 1 << 26 });

/** A sheet of the packet by its title. */
const sheet = (frame, title) => frame.locator('section', { has: frame.locator('h2', { hasText: title }) });

/** Packets of all samples, made once. */
let made;
function packets() {
  if (made === undefined) {
    made = mkdtempSync(join(tmpdir(), 'fieldpair-packets-'));
    process.once('exit', () => rmSync(made, { recursive: true, force: true }));
    run(process.execPath, program, 'packet', stores, '--out', made, '--date', '2026-03-14', '--revision', '3f2a91bc04');
  }
  return made;
}
const fileOf = (store, end) => join(packets(), store, `${store}-packet.${end}`);

scenario('makes the packet of the store at the cursor, to look at', async (workbench) => {
  await workbench.openFile('small/store.pair');
  await workbench.command("Fieldpair: Make the Installer's Packet");
  const frame = await webviewWith(workbench.page, '#sheet-2');
  assert.match(await frame.locator('h1').textContent(), /Installer.s packet/);
  assert.equal(await frame.locator('body script').count(), 0);
  // Columns are as wide as in the file.
  const widths = await frame.locator('#sheet-3 col').evaluateAll((all) => all.map((one) => one.style.width));
  assert.ok(widths.length > 0 && widths.every((width) => width.endsWith('%')), widths.join());
  await picture(workbench, 'packet-in-editor');
});

scenario(
  'keeps the packet up to date while the text is edited, and leaves alone what has not changed',
  async (workbench) => {
    await workbench.openFile('trial/sound.pair');
    await workbench.command("Fieldpair: Make the Installer's Packet");
    const frame = await webviewWith(workbench.page, '#sheet-2');
    const addresses = await sheet(frame, 'Address table').elementHandle();
    const landings = await sheet(frame, 'Landing schedule').elementHandle();
    await frame.evaluate(() => window.scrollTo(0, 900));
    await workbench.command('View: Focus First Editor Group');
    await workbench.goTo({ line: 11, column: 5 });
    for (let presses = 0; presses < 2; presses++) await workbench.page.keyboard.press('Delete');
    await workbench.page.keyboard.type('90');
    await sheet(frame, 'Landing schedule').filter({ hasText: '90 ft' }).waitFor();
    assert.ok(
      await addresses.evaluate((element) => element.isConnected),
      'the address table is the element that it was',
    );
    assert.ok(!(await landings.evaluate((element) => element.isConnected)), 'the landing schedule is a new one');
    assert.equal(await frame.evaluate(() => window.scrollY), 900);
    await workbench.page.keyboard.press('Control+z');
  },
);

scenario('saves the packet where it is wanted, in the formats that were ticked', async (workbench) => {
  const { page } = workbench;
  const folder = join(stores, 'handed-out');
  mkdirSync(folder, { recursive: true });
  await workbench.openFile('small/store.pair');
  await workbench.command('Fieldpair: Save Packet...');
  const rows = page.locator('.quick-input-list .monaco-list-row');
  await rows.filter({ hasText: 'PDF' }).waitFor();
  await rows
    .filter({ hasText: 'CSV' })
    .locator('input[type=checkbox], .monaco-checkbox, .quick-input-list-checkbox')
    .first()
    .click();
  await picture(workbench, 'packet-formats');
  await page
    .locator('.quick-input-action .monaco-button, .quick-input-widget .monaco-button')
    .filter({ hasText: 'OK' })
    .first()
    .click();
  // The editor in a browser asks for the folder in its own list.
  await rows.filter({ hasText: 'handed-out' }).click();
  const path = page.locator('.quick-input-widget input.input');
  await readUntil(
    'the folder',
    () => path.inputValue(),
    (value) => value.endsWith('/handed-out/'),
    10_000,
  );
  await page.locator('.quick-input-widget .monaco-button', { hasText: 'Save Packet Here' }).click();
  await workbench.notifications((all) => all.some((text) => /files written to .*handed-out/.test(text)));
  const files = readdirSync(join(folder, 'quillbrook03'), { recursive: true });
  assert.ok(files.includes('quillbrook03-packet.pdf') && files.includes('quillbrook03-packet.html'), files.join());
  assert.ok(
    files.some((name) => name.endsWith('.csv')),
    files.join(),
  );
  assert.ok(!files.some((name) => name.endsWith('.xlsx')), files.join());
  assert.match(
    run('pdftotext', join(folder, 'quillbrook03', 'quillbrook03-packet.pdf'), '-'),
    /Quillbrook 3, Alder Row/,
  );
});

for (const store of ['quillbrook12', 'quillbrook31', 'quillbrook27']) {
  scenario(`shows the packet of ${store} on a phone and a desk without scrolling sideways`, async (workbench) => {
    for (const [name, width] of [
      ['phone', 360],
      ['desk', 1280],
    ]) {
      // The checker comes from outside, which the policy of the page does not allow.
      const page = await workbench.page
        .context()
        .browser()
        .newPage({ viewport: { width, height: 780 }, bypassCSP: true });
      try {
        const complaints = [];
        page.on('console', (message) => complaints.push(message.text()));
        await page.goto(pathToFileURL(fileOf(store, 'html')).href);
        const overhang = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        assert.equal(overhang, 0, `${overhang} px too wide at ${width} px`);
        assert.deepEqual(complaints, []);
        assert.deepEqual(await accessibilityProblems(page.mainFrame(), workbenchFolder), []);
        await page.locator('#sheet-3').scrollIntoViewIfNeeded();
        await page.evaluate(() => document.querySelector('#sheet-3').scrollIntoView());
        await page.screenshot({ path: join(screenshots, `packet-${store}-${name}.png`) });
      } finally {
        await page.close();
      }
    }
  });
}

scenario('reads nothing but itself, and needs no script', async (workbench) => {
  const context = await workbench.page.context().browser().newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  try {
    const requests = [];
    page.on('request', (request) => requests.push(request.url()));
    const url = pathToFileURL(fileOf('quillbrook12', 'html')).href;
    await page.goto(url);
    await page.locator('#contents a').last().click();
    await page.locator('caption', { hasText: 'Devices' }).waitFor();
    assert.deepEqual(
      [...new Set(requests)].map((one) => one.replace(/#.*$/, '')),
      [url],
    );
  } finally {
    await context.close();
  }
});

scenario('prints the HTML with the store, the date and the page on every page', async (workbench) => {
  const page = await workbench.page.context().browser().newPage();
  try {
    await page.goto(pathToFileURL(fileOf('quillbrook03', 'html')).href);
    const printed = join(packets(), 'printed.pdf');
    await page.pdf({ path: printed, preferCSSPageSize: true });
    const texts = run('pdftotext', '-layout', printed, '-').split('\f').slice(0, -1);
    for (const [index, text] of texts.entries()) {
      assert.match(text, new RegExp(`page ${index + 1} of ${texts.length}\\b`));
      assert.match(text, /Quillbrook 3, Alder Row[^\n]*revision/);
      assert.match(text, /De-energise, lock out, prove dead/);
    }
  } finally {
    await page.close();
  }
});

scenario('is a PDF that poppler reads: embedded fonts, text, an outline, vector drawings', async () => {
  const file = fileOf('quillbrook12', 'pdf');
  const info = run('pdfinfo', file);
  const pages = Number(/^Pages:\s+(\d+)/m.exec(info)?.[1]);
  assert.match(info, /^Page size:\s+612 x 792 pts \(letter\)/m);
  assert.match(info, /^JavaScript:\s+no/m);
  const fonts = run('pdffonts', file).trim().split('\n').slice(2);
  assert.equal(fonts.length, 2);
  // Columns of pdffonts: embedded, subset, with a map to Unicode.
  for (const font of fonts) assert.match(font, /DejaVuSansCondensed.*\byes yes yes\b/);
  // Diagrams are lines, not images.
  assert.equal(run('pdfimages', '-list', file).trim().split('\n').length, 2);
  const texts = run('pdftotext', '-layout', file, '-').split('\f').slice(0, -1);
  assert.equal(texts.length, pages);
  const all = texts.join('\n');
  for (const text of ['produce1', 'freezerDoor2', 'D+ (plus)', 'Terminator: ON', 'Quillbrook 12, Fennel Street']) {
    assert.ok(all.includes(text), text);
  }
  for (const [index, text] of texts.entries()) assert.match(text, new RegExp(`page ${index + 1} of ${pages}\\b`));
  run('pdftoppm', '-r', '60', '-png', '-f', '1', '-l', '24', file, join(screenshots, 'packet-page'));
  const empty = readdirSync(screenshots).filter(
    (name) => name.startsWith('packet-page') && readFileSync(join(screenshots, name)).length < 4000,
  );
  assert.deepEqual(empty, [], 'a page shows next to nothing');
});

scenario('is made by several threads as by one', async () => {
  const folders = ['1', '2'].map((jobs) => {
    const out = join(packets(), `by-${jobs}`);
    run(
      process.execPath,
      program,
      'packet',
      stores,
      '--out',
      out,
      '--date',
      '2026-03-14',
      '--format',
      'pdf,html,xlsx',
      '--jobs',
      jobs,
    );
    return out;
  });
  const [one, other] = folders.map((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => [
        `${parentPath.slice(folder.length)}/${name}`,
        readFileSync(join(parentPath, name), 'base64'),
      ])
      .sort(([left], [right]) => (left < right ? -1 : 1)),
  );
  assert.ok(one.length >= 15);
  assert.deepEqual(
    other.map(([name]) => name),
    one.map(([name]) => name),
  );
  for (const [index, [name, bytes]] of one.entries()) assert.equal(other[index][1], bytes, name);
});
