/** A running workbench, driven with the keyboard and the mouse and read from the screen. */
import { readProblems } from './problems-panel.mjs';
import { exactly, readUntil } from './reading.mjs';

/**
 * Each helper does what a user does and reads what a user sees. Those that read take `until`: they read again until
 * it holds, and throw with the last reading when it never does. All else is plain Playwright on `page`.
 *
 * @typedef {{ line: number, column: number }} Place both count from 1
 */
export class Workbench {
  /** @type {import('playwright-core').Page} */
  page;
  /** @type {string[]} */
  browserErrors;
  /** Ends the browser and the server, and removes the scratch folder. */
  close;
  #server;
  #timeout;

  constructor({ page, server, browserErrors, timeout, close }) {
    Object.assign(this, { page, browserErrors, close });
    this.#server = server;
    this.#timeout = timeout;
  }

  /** Runs a command by its whole palette title, such as 'View: Toggle Problems'. */
  async command(title) {
    for (let triesLeft = 2; ; triesLeft--) {
      await this.#ask(`>${title}`);
      try {
        return await this.pick(title, Math.min(3000, this.#timeout));
      } catch (error) {
        if (!triesLeft) throw error;
        // An open palette takes up no command whose 'when' has come true since.
        await this.page.keyboard.press('Escape');
      }
    }
  }

  /** The titles that the palette offers for a text. */
  async offeredCommands(text, until = (titles) => titles.length > 0) {
    const titles = this.page.locator('.quick-input-list .monaco-list-row .label-name');
    const began = Date.now();
    for (;;) {
      await this.#ask(`>${text}`);
      try {
        return await readUntil('the commands', () => titles.allInnerTexts(), until, Math.min(2000, this.#timeout));
      } catch (error) {
        // An open palette takes up no command whose 'when' has come true since.
        if (Date.now() - began > this.#timeout) throw error;
      } finally {
        await this.page.keyboard.press('Escape');
      }
    }
  }

  /** Chooses an entry of the quick pick that is open. */
  async pick(label, timeout = this.#timeout) {
    const rows = this.page.locator('.quick-input-list .monaco-list-row');
    const name = this.page.locator('.label-name', { hasText: exactly(label) });
    try {
      await rows.filter({ has: name }).first().click({ timeout });
    } catch (cause) {
      const shown = await rows.locator('.label-name').allInnerTexts();
      throw new Error(`'${label}' is not offered. Offered: ${shown.join(' | ') || 'nothing'}`, { cause });
    }
  }

  /** Opens a file, by its path within the workspace, through quick open. */
  async openFile(path) {
    const name = path.split('/').pop();
    await this.#ask(path);
    await this.pick(name);
    await this.activeGroup.locator('.tab.active', { hasText: exactly(name) }).waitFor();
    await this.activeGroup.locator('.monaco-editor .view-line').first().waitFor();
  }

  /** Puts the cursor of the active text editor at a place. */
  async goTo({ line, column }) {
    if (!(await this.activeGroup.locator('.monaco-editor').count())) throw new Error('No text editor is active.');
    await this.#ask(`:${line}:${column}`);
    await this.page
      .locator('.quick-input-list .monaco-list-row', { hasText: `line ${line}` })
      .first()
      .waitFor();
    await this.#quickInput.press('Enter');
    await this.#quickInput.waitFor({ state: 'hidden' });
  }

  /** The lines of the active editor that are on the screen, once they are as wanted. */
  async editorText(until = () => true) {
    const read = async () => {
      const lines = await this.activeGroup
        .locator('.monaco-editor .view-lines .view-line')
        .evaluateAll((all) => all.map((line) => [parseFloat(line.style.top), line.textContent]));
      return lines
        .sort(([left], [right]) => left - right)
        .map(([, text]) => text.replaceAll('\u00a0', ' '))
        .join('\n');
    };
    return this.#read("the editor's text", read, until);
  }

  /** Where the cursor is, as the status bar says. */
  async cursor(until = () => true) {
    const item = this.page.locator('#status\\.editor\\.selection');
    const read = async () => {
      const [, line, column] = /Ln (\d+), Col (\d+)/.exec(await item.innerText()) ?? [];
      return { line: Number(line), column: Number(column) };
    };
    return this.#read('the cursor', read, until);
  }

  /** Saves the active file, and waits until it is written. */
  async save() {
    await this.page.keyboard.press('Control+s');
    await this.activeGroup.locator('.tab.active:not(.dirty)').waitFor();
  }

  /**
   * What the Problems panel lists, scrolled through to its end.
   *
   * @param {(problems: import('./problems-panel.mjs').Problem[]) => boolean} [until]
   */
  async problems(until = () => true) {
    const panel = await this.#problemsPanel();
    return this.#read('the problems', () => readProblems(this.page, panel), until);
  }

  /**
   * What the Problems panel lists of the file with a name. Meanwhile the panel is told to show that alone: to scroll
   * through all findings of a workspace takes seconds.
   *
   * @param {string} name
   * @param {(problems: import('./problems-panel.mjs').Problem[]) => boolean} [until]
   */
  async problemsOf(name, until = () => true) {
    const panel = await this.#problemsPanel();
    const filter = this.page.locator('.viewpane-filter input[placeholder*="**/*.ts"]:visible');
    const shows = this.page.locator('.viewpane-filter-badge:not(.hidden)');
    await filter.fill(name);
    // The panel takes it up after a moment; where it has findings of this file alone, nothing shows that.
    await shows.waitFor({ timeout: 2000 }).catch(() => undefined);
    const read = async () => (await readProblems(this.page, panel)).filter(({ file }) => file.endsWith(`/${name}`));
    const found = await this.#read(`the problems of ${name}`, read, until);
    await filter.fill('');
    // Until it has taken that up, another view of the panel would begin with the filter as its own.
    await shows.waitFor({ state: 'hidden' });
    return found;
  }

  async #problemsPanel() {
    const panel = this.page.locator('.markers-panel');
    if (!(await panel.isVisible())) await this.command('Problems: Focus on Problems View');
    await panel.waitFor();
    return panel;
  }

  /** The text of the hover at a place. Its parts arrive one by one, so ask with `until` for the one that is meant. */
  async hover(place, until = (text) => text !== '' && !text.startsWith('Loading')) {
    await this.goTo(place);
    const rows = this.page.locator('.monaco-resizable-hover .hover-row:not(.status-bar):visible');
    return this.#raise('the hover', 'Control+k Control+i', async () => (await rows.allInnerTexts()).join('\n'), until);
  }

  /** The labels of the completions offered at a place, left open for a picture when `keep` says so. */
  async completions(place, until = (labels) => labels.length > 0, { keep = false } = {}) {
    await this.goTo(place);
    const labels = this.page.locator('.suggest-widget.visible .monaco-list-row .label-name');
    const found = await this.#raise('the completions', 'Control+Space', () => labels.allInnerTexts(), until);
    if (!keep) await this.page.keyboard.press('Escape');
    return found;
  }

  /** The titles of the quick fixes offered at a place, left open for a picture when `keep` says so. */
  async quickFixes(place, until = (titles) => titles.length > 0, { keep = false } = {}) {
    await this.goTo(place);
    const titles = this.page.locator('.action-widget .monaco-list-row.action .title');
    const found = await this.#raise('the quick fixes', 'Control+.', () => titles.allInnerTexts(), until);
    if (!keep) await this.page.keyboard.press('Escape');
    return found;
  }

  /** Applies one of the quick fixes offered at a place. */
  async quickFix(title, place) {
    const titles = await this.quickFixes(place, (all) => all.includes(title), { keep: true });
    const widget = this.page.locator('.action-widget');
    // The widget takes no clicks until the mouse has moved, so the keyboard it is.
    await widget.locator('.monaco-list-row.action.focused').waitFor();
    for (let down = titles.indexOf(title); down > 0; down--) await this.page.keyboard.press('ArrowDown');
    await widget.locator('.monaco-list-row.focused', { hasText: exactly(title) }).waitFor();
    await this.page.keyboard.press('Enter');
    await widget.waitFor({ state: 'hidden' });
  }

  /** The messages shown at the lower right. */
  async notifications(until = () => true) {
    const messages = this.page.locator('.notifications-toasts .notification-list-item-message');
    return this.#read('the notifications', () => messages.allInnerTexts(), until);
  }

  /** The texts of all that match a selector. */
  async texts(selector, until = (texts) => texts.length > 0) {
    return this.#read(selector, () => this.page.locator(selector).allInnerTexts(), until);
  }

  /** A picture of the whole page. */
  async screenshot(path) {
    await this.page.screenshot({ path, animations: 'disabled' });
  }

  /** Ends every process of the workbench whose command line matches, as a crash would. */
  crash(pattern) {
    return this.#server.crash(pattern);
  }

  /** Log files by name, each Output channel being one; remoteexthost.log tells what activates when, and why not. */
  logs(name) {
    return this.#server.logs(name);
  }

  get activeGroup() {
    return this.page.locator('.editor-group-container.active');
  }

  get #quickInput() {
    return this.page.locator('.quick-input-widget input.input');
  }

  /** Opens quick open in the mode that the text's first character picks. */
  async #ask(text) {
    const began = Date.now();
    while (!(await this.#quickInput.isVisible())) {
      if (Date.now() - began > this.#timeout) throw new Error('The command palette does not open.');
      await this.page.keyboard.press('F1');
      await this.#quickInput.waitFor({ timeout: 2000 }).catch(() => undefined);
    }
    await this.#quickInput.fill(text);
  }

  /** Presses keys until what they bring up is as wanted; early on a server may not answer yet. */
  async #raise(what, keys, read, until) {
    const began = Date.now();
    for (;;) {
      for (const key of keys.split(' ')) await this.page.keyboard.press(key);
      try {
        return await readUntil(what, read, until, Math.min(3000, this.#timeout));
      } catch (error) {
        if (Date.now() - began > this.#timeout) throw error;
        await this.page.keyboard.press('Escape');
      }
    }
  }

  #read(what, read, until) {
    return readUntil(what, read, until, this.#timeout);
  }
}
