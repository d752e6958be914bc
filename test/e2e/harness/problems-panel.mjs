/** Reads the Problems panel as a user does, by scrolling: only the rows on the screen exist. */
import { pause } from './reading.mjs';

/**
 * @typedef {object} Problem
 * @property {string} file absolute path
 * @property {'error' | 'warning' | 'info'} severity
 * @property {string} message
 * @property {string} source
 * @property {string} code
 * @property {number} line from 1
 * @property {number} column from 1
 */

/**
 * @param {import('playwright-core').Page} page
 * @param {import('playwright-core').Locator} panel
 * @returns {Promise<Problem[]>}
 */
export async function readProblems(page, panel) {
  const list = panel.locator('.monaco-list');
  if (!(await list.isVisible())) return [];
  const rows = await collectRows(page, list);
  const problems = [];
  let file = '';
  for (const [, row] of [...rows].sort(([left], [right]) => left - right)) {
    if (row.level === 1) file = row.file;
    if (row.level !== 2) continue; // deeper rows are related information
    const [, line, column] = /Ln (\d+), Col (\d+)/.exec(row.place) ?? [];
    const { message, source, code } = row;
    const severity = row.label.split(':')[0].toLowerCase();
    problems.push({ file, severity, message, source, code, line: Number(line), column: Number(column) });
  }
  return problems;
}

async function collectRows(page, list) {
  const rows = new Map();
  const collect = async () => {
    for (const row of await list.locator('.monaco-list-rows > .monaco-list-row').evaluateAll(describeRows)) {
      rows.set(row.index, row);
    }
  };
  const height = (await list.boundingBox())?.height ?? 0;
  const top = () => list.locator('.monaco-list-rows').evaluate((node) => parseFloat(node.style.top));
  const wheel = async (distance) => {
    const before = await top();
    await page.mouse.wheel(0, distance);
    await pause(50);
    return (await top()) !== before;
  };
  const scrolls = () =>
    list.evaluate((node) => node.querySelector('.monaco-list-rows').offsetHeight > node.clientHeight);
  if (!(await scrolls())) {
    await collect();
    return rows;
  }
  await list.hover({ position: { x: 20, y: height / 2 } });
  while (await wheel(-100_000));
  do await collect();
  while (await wheel(2 * height)); // which scrolls by some 0.8 of the height
  await collect();
  while (await wheel(-100_000));
  return rows;
}

/** Runs in the page. */
function describeRows(all) {
  return all.map((row) => ({
    index: Number(row.dataset.index),
    level: Number(row.getAttribute('aria-level')),
    label: row.getAttribute('aria-label'),
    file: row.querySelector('.resource-label-container .monaco-icon-label')?.getAttribute('aria-label'),
    message: [...row.querySelectorAll('.marker-message')].map((part) => part.textContent).join('\n'),
    source: row.querySelector('.marker-source')?.textContent ?? '',
    code: row.querySelector('.marker-code')?.textContent ?? '',
    place: row.querySelector('.marker-line')?.textContent ?? '',
  }));
}
