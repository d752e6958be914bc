/** The extension's side of the packet's page: which packet it is, and that it follows the text. */
import { Disposable, workspace } from 'vscode';
import type { PacketParams } from '../../../../server/src/protocol.js';
import type { Client } from '../../client.js';
import { movedBy, type Place } from '../../text/moved-place.js';
import type { Panel, PanelKeeper } from '../panel.js';
import type { FromPacketPage, ToPacketPage } from './messages.js';

/** While keys are pressed faster than this, in milliseconds, no packet is made. */
const typingPause = 400;

export class PacketKeeper implements PanelKeeper {
  readonly #client: Client;
  readonly #panel: Panel<ToPacketPage, FromPacketPage>;
  readonly #parts: Disposable;
  /** A place in the store that is shown, and the text that it is in. */
  #shown: { readonly uri: string; place: Place };
  #lastEdit = 0;

  constructor(client: Client, panel: Panel<ToPacketPage, FromPacketPage>) {
    this.#client = client;
    this.#panel = panel;
    this.#shown = { uri: panel.source.toString(), place: cursorOf(panel) };
    this.#parts = Disposable.from(
      workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (document.languageId !== 'fieldpair' || !contentChanges.length) return;
        this.#lastEdit = Date.now();
        if (document.uri.toString() === this.#shown.uri) {
          this.#shown.place = movedBy(this.#shown.place, contentChanges);
        }
      }),
      workspace.onDidChangeConfiguration((change) => change.affectsConfiguration('fieldpair') && panel.refresh()),
    );
  }

  /** What is shown, as the server is asked for it. */
  get params(): PacketParams {
    const uri = this.#panel.source.toString();
    if (this.#shown.uri !== uri) this.#shown = { uri, place: cursorOf(this.#panel) };
    return packetParams(uri, this.#shown.place);
  }

  /** Shows the store at a place of the text. */
  show({ line, character }: Place): void {
    this.#shown = { uri: this.#panel.source.toString(), place: { line, character } };
    this.#panel.refresh();
  }

  async refresh(): Promise<void> {
    await this.#typingPaused();
    const { params } = this;
    const page = await this.#client.request('fieldpair/packet', params);
    if (params.uri !== this.#panel.source.toString()) return;

    this.#panel.post(page ? { html: page.html } : { nothing: 'There is no store in this file.' });
  }

  dispose(): void {
    this.#parts.dispose();
  }

  async #typingPaused(): Promise<void> {
    for (;;) {
      const left = this.#lastEdit + typingPause - Date.now();
      if (left <= 0) return;
      await new Promise((resolve) => setTimeout(resolve, left));
    }
  }
}

/** The packet of the store at a place, as it is made today on the reader's paper. */
export function packetParams(uri: string, { line, character }: Place): PacketParams {
  const paper = workspace.getConfiguration('fieldpair').get<'letter' | 'a4'>('paper', 'letter');
  return { uri, position: { line, character }, paper, date: today() };
}

function cursorOf({ editor }: Panel<ToPacketPage, FromPacketPage>): Place {
  const { line, character } = editor?.selection.active ?? { line: 0, character: 0 };
  return { line, character };
}

function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
