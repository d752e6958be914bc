/** Waiting and reading, as every part of the harness does it. */

export const pause = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

/** A pattern for a text that is exactly this, spaces around it aside. */
export const exactly = (text) => new RegExp(`^\\s*${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*$`);

/**
 * Reads again and again until what was read is as wanted.
 *
 * @template T
 * @param {string} what names it in the error
 * @param {() => Promise<T>} read
 * @param {(found: T) => boolean} until
 * @param {number} timeout milliseconds
 * @returns {Promise<T>}
 */
export async function readUntil(what, read, until, timeout) {
  const began = Date.now();
  for (;;) {
    const found = await read();
    if (until(found)) return found;
    if (Date.now() - began > timeout) {
      throw new Error(`Waited in vain. Last read, ${what}: ${JSON.stringify(found, null, 1)}`);
    }
    await pause(100);
  }
}
