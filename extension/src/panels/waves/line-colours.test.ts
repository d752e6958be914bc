/** The colours of lines in the view: those of the plot on light grounds, a set of their own on dark ones. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { lineColours } from '../../../../shared/src/plot/line-styles.js';
import { colourDistances, contrasts } from '../../../../test/outside/colours.js';

const css = readFileSync(new URL('page/waves.css', import.meta.url), 'utf8');
const [light, dark] = [...css.matchAll(/^(?::root|body[^{]*) \{\n((?: {2}--wave-\d: .*\n)+)\}/gm)].map(([, block]) =>
  [...block!.matchAll(/--wave-\d: (#[\da-f]{6});/g)].map(([, colour]) => colour!),
);

it('are those of the plot where the ground is light', () => {
  expect(light).toEqual(lineColours);
});

it('can be told apart by everybody, and from dark grounds', () => {
  expect(dark).toHaveLength(lineColours.length);
  // Colours 10 apart by CIEDE2000 are seen as different at a glance (common practice, no published source).
  for (const distance of Object.values(colourDistances(dark!))) expect(distance).toBeGreaterThan(15);
  // WCAG 2.2, success criterion 1.4.11: graphics need a contrast of 3 to 1. The editor's dark grounds are these or darker.
  for (const ground of ['#1f1f1f', '#000000'])
    for (const contrast of contrasts(dark!, ground)) expect(contrast).toBeGreaterThanOrEqual(3);
});
