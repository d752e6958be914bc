/** The page inside a webview, which VS Code keeps in a frame within a frame. */

/**
 * The frame of the webview that shows something.
 *
 * @param {import('playwright-core').Page} page
 * @param {string} selector what only that webview has
 * @returns {Promise<import('playwright-core').Frame>}
 */
export async function webviewWith(page, selector, timeout = 30_000) {
  const began = Date.now();
  for (;;) {
    for (const frame of page.frames()) {
      if (frame === page.mainFrame()) continue;
      // A frame may go away while it is looked at.
      const found = await frame
        .locator(selector)
        .count()
        .catch(() => 0);
      if (found) return frame;
    }
    if (Date.now() - began > timeout) throw new Error(`No webview shows ${selector}.`);
    await page.waitForTimeout(100);
  }
}
