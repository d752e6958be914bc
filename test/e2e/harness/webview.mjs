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

/** By how many pixels a page is wider than what is seen of it. */
export const overhang = (frame) =>
  frame.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Whether an element of a page is wider than what is seen of it, by its selector, in pixels. */
export const overhangOf = (frame, selector) =>
  frame.locator(selector).evaluate((element) => element.scrollWidth - element.clientWidth);

/**
 * What a page's policy lets pass that it should not: markup that runs, scripts, pictures and requests from elsewhere.
 * Each is tried in the page itself; empty when all are refused.
 *
 * @param {import('playwright-core').Frame} frame
 */
export async function policyGaps(frame) {
  const refused = await frame.evaluate(async () => {
    const seen = new Set();
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => seen.add(effectiveDirective));
    const put = (name, properties) => {
      const element = document.createElement(name);
      Object.assign(element, properties);
      document.body.append(element);
      return element;
    };
    const script = put('script', { textContent: 'globalThis.ran = "inline script"' });
    const handler = put('div', {});
    handler.setAttribute('onclick', 'globalThis.ran = "handler"');
    handler.click();
    const evaluated = put('script', { src: 'data:text/javascript,globalThis.ran="data script"' });
    const image = put('img', { src: 'https://example.invalid/x.png' });
    const style = put('style', { textContent: 'body { --leaked: 1 }' });
    const inner = put('iframe', { src: 'https://example.invalid/' });
    await fetch('https://example.invalid/').catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 300));
    for (const one of [script, handler, evaluated, image, style, inner]) one.remove();
    return { seen: [...seen], ran: globalThis.ran };
  });
  const wanted = ['script-src-elem', 'script-src-attr', 'img-src', 'style-src-elem', 'frame-src', 'connect-src'];
  return [
    ...wanted.filter((directive) => !refused.seen.includes(directive)),
    ...(refused.ran === undefined ? [] : [`ran: ${refused.ran}`]),
  ];
}
