/** Holds what a page shows against the rules of accessibility that a program can check, by axe-core. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * What is wrong in a frame by WCAG 2.2, levels A and AA, one line each; empty when nothing is.
 *
 * @param {import('playwright-core').Frame} frame
 * @param {string} folder where run.sh put the checker
 */
export async function accessibilityProblems(frame, folder) {
  // A webview lets no foreign script load, but what a debugger evaluates runs.
  await frame.evaluate(readFileSync(join(folder, 'node_modules/axe-core/axe.min.js'), 'utf8'));
  return frame.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    const { violations } = await globalThis.axe.run(document, { runOnly: { type: 'tag', values: tags } });
    return violations.flatMap(({ id, help, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${help}: ${html.slice(0, 160)} (${failureSummary})`),
    );
  });
}
