/** What holds for all pages beside the text: they fit beside it, let nothing in, take every name for text, and can be read. */
import assert from 'node:assert/strict';
import { accessibilityProblems } from './harness/accessibility.mjs';
import { overhang, overhangOf, policyGaps, webviewWith } from './harness/webview.mjs';
import { picture, scenario, scenarioApart, useSettings, workbenchFolder } from './scenario.mjs';

/** Each with the command that opens it, and a part that only it has. */
const panels = [
  { name: 'drawing', command: 'Fieldpair: Draw This Store', ready: 'svg .landing', scrolls: '.stage' },
  { name: 'figures', command: 'Fieldpair: Show Figures of This Bus', ready: 'table.landings tbody tr' },
  { name: 'waves', command: 'Fieldpair: Show Waveforms of This Bus', ready: '.picture svg', scrolls: '.figures' },
  { name: 'packet', command: "Fieldpair: Make the Installer's Packet", ready: '#sheet-2' },
];

async function openPanel(workbench, path, place, { command, ready }) {
  await workbench.openFile(path);
  await workbench.goTo(place);
  await workbench.command(command);
  return webviewWith(workbench.page, ready);
}

for (const panel of panels) {
  const { name, scrolls } = panel;
  scenario(`fits beside the text in a window of 1280 pixels: ${name}`, async (workbench) => {
    const { page } = workbench;
    const before = page.viewportSize();
    await page.setViewportSize({ width: 1280, height: 800 });
    await workbench.command('View: Toggle Primary Side Bar Visibility');
    try {
      // The largest bus of the samples.
      const frame = await openPanel(workbench, 'full/store.pair', { line: 26, column: 8 }, panel);
      await page.waitForTimeout(1000);
      await picture(workbench, `half-window-${name}`);
      assert.ok((await overhang(frame)) <= 0, `${await overhang(frame)} px too wide`);
      if (scrolls)
        assert.ok((await overhangOf(frame, scrolls)) <= 0, `${await overhangOf(frame, scrolls)} px too wide`);
    } finally {
      await workbench.command('View: Toggle Primary Side Bar Visibility');
      await page.setViewportSize(before);
    }
  });

  scenario(`takes hostile names for text, and lets nothing in: ${name}`, async (workbench) => {
    const complaints = workbench.browserErrors.length;
    const frame = await openPanel(workbench, 'trial/hostile.pair', { line: 7, column: 20 }, panel);
    await picture(workbench, `hostile-${name}`);
    const elements = await frame.evaluate(() => ({
      scripts: document.querySelectorAll('body script').length,
      others: document.querySelectorAll('img, iframe, object, embed, [onerror], [onload], [onclick]').length,
      links: [...document.querySelectorAll('a[href]')].filter((link) => !link.getAttribute('href').startsWith('#'))
        .length,
      title: document.title,
    }));
    assert.deepEqual(
      { ...elements, title: elements.title === 'ran' },
      { scripts: 0, others: 0, links: 0, title: false },
    );
    // Nothing that is seen turns the direction of writing.
    const seen = await frame.evaluate(() => document.body.innerText);
    assert.match(seen, /gnp\.esac/);
    assert.doesNotMatch(seen, /[\u202a-\u202e\u2066-\u2069]/);
    assert.deepEqual(await accessibilityProblems(frame, workbenchFolder), []);
    assert.equal(workbench.browserErrors.length, complaints, workbench.browserErrors.slice(complaints).join('\n'));
    assert.deepEqual(await policyGaps(frame), []);
    // What the last step tried is refused loudly.
    workbench.browserErrors.length = complaints;
  });
}

scenarioApart('brings the pages back when the window is loaded anew', {}, async (workbench) => {
  const [, figures, , packet] = panels;
  await openPanel(workbench, 'trial/sound.pair', { line: 9, column: 8 }, figures);
  await workbench.command('View: Focus First Editor Group');
  await workbench.command(packet.command);
  await webviewWith(workbench.page, packet.ready);
  const loaded = workbench.page.waitForEvent('load');
  await workbench.command('Developer: Reload Window');
  await loaded;
  await webviewWith(workbench.page, packet.ready, 60_000);
  await workbench.page.locator('.tab', { hasText: 'Figures: sound.pair' }).click();
  const again = await webviewWith(workbench.page, figures.ready, 60_000);
  await again.getByRole('button', { name: 'caseC', exact: true }).waitFor();
});

for (const [look, theme] of [
  ['dark', 'Default Dark Modern'],
  ['high-contrast', 'Default High Contrast'],
  ['high-contrast-light', 'Default High Contrast Light'],
]) {
  scenario(`shows figures that everybody can read, ${look}`, async (workbench) => {
    useSettings({ 'workbench.colorTheme': theme });
    try {
      const frame = await openPanel(workbench, 'as-found/store.pair', { line: 10, column: 8 }, panels[1]);
      await picture(workbench, `figures-${look}`);
      assert.deepEqual(await accessibilityProblems(frame, workbenchFolder), []);
    } finally {
      useSettings({});
    }
  });
}
