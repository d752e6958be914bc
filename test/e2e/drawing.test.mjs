/** The drawing beside the text: what it shows, how it follows, and what is done in it. */
import assert from 'node:assert/strict';
import { accessibilityProblems } from './harness/accessibility.mjs';
import { webviewWith } from './harness/webview.mjs';
import { picture, scenario, scenarioApart, useSettings, workbenchFolder } from './scenario.mjs';

/** Opens a file and its drawing, and gives the page of the drawing. */
async function drawingOf(workbench, path) {
  await workbench.openFile(path);
  await workbench.command('Fieldpair: Draw This Store');
  return webviewWith(workbench.page, 'svg .landing');
}

/** A part of the drawing by how its name begins. */
const part = (frame, name) => frame.locator(`svg [role=graphics-symbol][aria-label^="${name}"]`).first();

const namesOf = (frame, kind) =>
  frame
    .locator(`svg [role=graphics-symbol].${kind}`)
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label').split(',')[0]));

/** Reads until it is as wanted. */
async function eventually(read, until) {
  const began = Date.now();
  for (;;) {
    const found = await read();
    if (until(found)) return found;
    if (Date.now() - began > 15_000) assert.fail(`still ${JSON.stringify(found)}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

const middleOf = async (locator) => {
  const { x, y, width, height } = await locator.boundingBox();
  return { x: x + width / 2, y: y + height / 2 };
};

scenario('draws the store of the text, with its findings where they are', async (workbench) => {
  const frame = await drawingOf(workbench, 'as-found/store.pair');
  const name = await part(frame, 'dairy4, CaseBoard').getAttribute('aria-label');
  assert.match(name, /error: dairy4 lies between the ends of bus dairy/);
  // The store goes on in another file, and its buses are here too.
  await part(frame, 'bus plant').waitFor();
  await picture(workbench, 'drawing');
});

scenario('goes from the drawing to the text and from the text to the drawing', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  await part(frame, 'caseB,').click();
  await workbench.command('View: Focus First Editor Group');
  await workbench.cursor(({ line }) => line === 10);
  await workbench.goTo({ line: 11, column: 14 });
  const here = frame.locator('svg .frames .here');
  const covers = async () => {
    const [mark, box] = await Promise.all([here.boundingBox(), part(frame, 'caseC,').boundingBox()]);
    return Boolean(mark && box) && mark.x <= box.x && box.x + box.width <= mark.x + mark.width + 1;
  };
  await eventually(covers, Boolean);
  await picture(workbench, 'drawing-cursor');
});

scenario('leads from an area to its heading, and tells what lies in it', async (workbench) => {
  const frame = await drawingOf(workbench, 'small/store.pair');
  const area = part(frame, 'area Sales floor, 6 landings');
  await area.locator('text').first().click();
  await workbench.command('View: Focus First Editor Group');
  await workbench.cursor(({ line }) => line === 12);
  await area.focus();
  // To have the focus may scroll, and what is told goes when the paper moves.
  await workbench.page.waitForTimeout(300);
  await workbench.page.keyboard.press('Space');
  await frame.locator('.facts', { hasText: 'along the cable: 34 ft to 96.5 ft' }).waitFor();
  await eventually(
    () => frame.locator('.unseen[role=status]').allInnerTexts(),
    (texts) => texts.some((text) => text.includes('area Sales floor')),
  );
  await picture(workbench, 'drawing-areas');
});

scenario('joins the arms of a star by lines, and leads from a waived finding to its reason', async (workbench) => {
  const frame = await drawingOf(workbench, 'as-found/store.pair');
  await part(frame, 'joint: all 2 places where frozen2 is drawn').waitFor();
  await frame.locator('.bar input').fill('cellar1');
  await frame.locator('.count', { hasText: '1 of 1' }).waitFor();
  await picture(workbench, 'drawing-joints');
  const hostile = await drawingOf(workbench, 'trial/hostile.pair');
  await hostile.locator('[aria-label*="waived error"]').first().hover();
  await hostile.locator('.facts', { hasText: 'waived because: <img src=x' }).waitFor();
  await hostile.locator('[aria-label*="waived error"]').first().click({ button: 'right' });
  // What is waived needs no mending.
  assert.deepEqual(await hostile.locator('.menu [role=menuitem]').allInnerTexts(), [
    'Go to the text',
    'Move towards the first landing',
  ]);
});

scenario('follows the text while it is typed, and leaves alone what has not changed', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  const kept = await part(frame, 'caseA,').elementHandle();
  await workbench.command('View: Focus First Editor Group');
  await workbench.goTo({ line: 11, column: 5 });
  for (let presses = 0; presses < 2; presses++) await workbench.page.keyboard.press('Delete');
  await workbench.page.keyboard.type('90');
  await part(frame, 'run from caseB to caseC, 90 ft').waitFor();
  assert.ok(await kept.evaluate((element) => element.isConnected), 'caseA is the element that it was');
});

scenario('shows the same facts as the text does', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  await part(frame, 'caseB,').hover();
  const facts = frame.locator('.facts');
  await facts.filter({ hasText: 'meter across the pair' }).waitFor();
  const shown = await facts.innerText();
  await picture(workbench, 'drawing-facts');
  const hover = await workbench.hover({ line: 10, column: 15 }, (text) => /meter across/.test(text));
  const reading = /meter across the pair, unpowered: .*/;
  assert.equal(reading.exec(shown)?.[0].trim(), reading.exec(hover)?.[0].trim());
});

scenario('mends a finding from the drawing, in one step that can be undone', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/unterminated.pair');
  const end = part(frame, 'probeA,');
  await eventually(
    () => end.getAttribute('aria-label'),
    (name) => /error:/.test(name),
  );
  await end.click({ button: 'right' });
  const fix = frame.locator('.menu [role=menuitem]', { hasText: '120 ohm' }).first();
  await fix.waitFor();
  await picture(workbench, 'drawing-menu');
  await fix.click();
  await eventually(
    () => end.getAttribute('aria-label'),
    (name) => !/error: .*terminat/.test(name),
  );
  await workbench.command('View: Focus First Editor Group');
  await workbench.editorText((text) => /address 2 terminate resistor 120 ohm/.test(text));
  await workbench.page.keyboard.press('Control+z');
  await workbench.editorText((text) => !/terminate resistor/.test(text));
});

scenario('carries a landing to another place by mouse and by keyboard', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  const order = () => namesOf(frame, 'landing');
  assert.deepEqual(await order(), ['head.field1', 'caseA', 'caseB', 'caseC']);
  const { mouse, keyboard } = workbench.page;
  const from = await middleOf(part(frame, 'caseA,'));
  const to = await middleOf(part(frame, 'caseB,'));
  await mouse.move(from.x, from.y + 20);
  await mouse.down();
  for (let step = 1; step <= 10; step++) await mouse.move(from.x + ((to.x + 30 - from.x) * step) / 10, from.y + 20);
  await frame.locator('.drop').waitFor();
  await picture(workbench, 'drawing-drag');
  await mouse.up();
  await eventually(order, (names) => names.join() === 'head.field1,caseB,caseA,caseC');
  await workbench.command('View: Focus First Editor Group');
  const text = await workbench.editorText((shown) => shown.includes('to be measured again'));
  assert.equal(text.match(/length to be measured again/g).length, 3);
  assert.ok(text.indexOf('to caseB') < text.indexOf('to caseA'));
  await picture(workbench, 'drawing-dragged');
  await keyboard.press('Control+z');
  await eventually(order, (names) => names.join() === 'head.field1,caseA,caseB,caseC');
  assert.doesNotMatch(await workbench.editorText(), /measured again/);

  await part(frame, 'caseC,').focus();
  await keyboard.press('Alt+ArrowLeft');
  await eventually(order, (names) => names.join() === 'head.field1,caseA,caseC,caseB');
  await eventually(
    () => frame.locator('.voice').innerText(),
    (said) => said.startsWith('caseC is behind caseA now'),
  );
});

scenario('is walked with the keyboard', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  const { keyboard } = workbench.page;
  const focused = () =>
    frame
      .locator('svg [role=graphics-symbol]:focus')
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label').split(',')[0])[0]);
  await part(frame, 'head.field1,').focus();
  await keyboard.press('ArrowRight');
  assert.equal(await focused(), 'caseA');
  await keyboard.press('Shift+ArrowRight');
  assert.equal(await focused(), 'run from caseA to caseB');
  await keyboard.press('End');
  assert.equal(await focused(), 'caseC');
  await keyboard.press('ArrowUp');
  assert.equal(await focused(), 'bus cases "Cases"'.slice(0, 9));
  await keyboard.press('?');
  await frame.locator('.help', { hasText: 'to the text' }).waitFor();
  await picture(workbench, 'drawing-keys');
  await keyboard.press('Escape');
  await keyboard.press('/');
  await keyboard.type('caseb');
  await frame.locator('.count', { hasText: /1 of \d/ }).waitFor();
  await keyboard.press('Escape');
  await part(frame, 'caseB,').focus();
  await keyboard.press('Enter');
  await workbench.cursor(({ line }) => line === 10);
});

for (const [name, theme] of [
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
  ['high-contrast', 'Default High Contrast'],
  ['high-contrast-light', 'Default High Contrast Light'],
]) {
  scenario(`draws so that everybody can read it, ${name}`, async (workbench) => {
    useSettings({ 'workbench.colorTheme': theme });
    const frame = await drawingOf(workbench, 'as-found/store.pair');
    await part(frame, 'dairy4, CaseBoard').waitFor();
    await picture(workbench, `drawing-${name}`);
    assert.deepEqual(await accessibilityProblems(frame, workbenchFolder), []);
    // So is what opens over it: facts, the menu, the list of keys.
    const { keyboard } = workbench.page;
    await part(frame, 'dairy4, CaseBoard').focus();
    await workbench.page.waitForTimeout(300);
    for (const [key, selector] of [
      ['Space', '.facts'],
      ['.', '.menu'],
      ['?', '.help'],
    ]) {
      await keyboard.press(key);
      await frame.locator(selector).waitFor();
      assert.deepEqual(await accessibilityProblems(frame, workbenchFolder), [], selector);
      await keyboard.press('Escape');
      await frame.locator(selector).waitFor({ state: 'hidden' });
    }
    useSettings({});
  });
}

scenario('draws the store that the cursor is in, where a file has several', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/pair-of-stores.pair');
  await part(frame, 'store east').waitFor();
  await workbench.command('View: Focus First Editor Group');
  await workbench.goTo({ line: 13, column: 8 });
  await part(frame, 'store west').waitFor();
  await part(frame, 'westA,').waitFor();
  await workbench.page.locator('.codelens-decoration a', { hasText: 'Draw this store' }).first().click();
  await part(frame, 'store east').waitFor();
});

scenario('shows all of a large store at once, and its full size again', async (workbench) => {
  const frame = await drawingOf(workbench, 'full/store.pair');
  const percent = async () => Number.parseInt(await frame.locator('.percent').innerText(), 10);
  const overhangs = () =>
    frame
      .locator('.stage')
      .evaluate((stage) => [stage.scrollWidth - stage.clientWidth, stage.scrollHeight - stage.clientHeight]);
  const fit = frame.locator('.bar button', { hasText: 'Fit' });
  await fit.click();
  await eventually(overhangs, (found) => found.every((pixels) => pixels <= 0));
  // Laid out for the page's proportions, it takes most of the page.
  const share = () =>
    frame.locator('.stage').evaluate((stage) => {
      const { width, height } = stage.querySelector('svg').getBoundingClientRect();
      return (width * height) / (stage.clientWidth * stage.clientHeight);
    });
  await eventually(share, (found) => 0.6 < found);
  await picture(workbench, 'drawing-fit');
  assert.ok((await percent()) < 60);
  await fit.click();
  await eventually(percent, (found) => found === 100);
});

scenario('draws to scale', async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  await frame.locator('.bar button', { hasText: 'To scale' }).click();
  const placeOf = async (name) => Number(await part(frame, name).locator('.dot').first().getAttribute('cx'));
  // 38 ft from the head to caseA on the first row, 40 ft from caseB to caseC on the second.
  const share = async () => {
    const [head, a, b, c] = await Promise.all(['head.field1,', 'caseA,', 'caseB,', 'caseC,'].map(placeOf));
    return (a - head) / (c - b);
  };
  await eventually(share, (found) => Math.abs(found - 38 / 40) < 0.01);
  await picture(workbench, 'drawing-scale');
});

scenarioApart('comes back as it was when the window is loaded anew', {}, async (workbench) => {
  const frame = await drawingOf(workbench, 'trial/sound.pair');
  await frame.locator('.bar button', { hasText: 'To scale' }).click();
  await frame.locator('.bar button', { hasText: '+' }).click();
  await frame.locator('.percent', { hasText: '125 %' }).waitFor();
  await part(frame, 'caseB,').focus();
  const loaded = workbench.page.waitForEvent('load');
  await workbench.command('Developer: Reload Window');
  await loaded;
  const again = await webviewWith(workbench.page, 'svg .landing', 60_000);
  await again.locator('.percent', { hasText: '125 %' }).waitFor();
  assert.equal(await again.locator('.bar button', { hasText: 'To scale' }).getAttribute('aria-pressed'), 'true');
  await part(again, 'caseB,').waitFor();
});
