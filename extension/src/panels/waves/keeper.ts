/** The extension's side of the waveform view: asks the server, remembers choices, writes files. */
import { CancellationTokenSource, Disposable, Range, Uri, ViewColumn, window, workspace } from 'vscode';
import type { WaveChoices, WavesPage, WavesParams } from '../../../../server/src/protocol.js';
import type { Client } from '../../client.js';
import type { Place } from '../../text/moved-place.js';
import type { Panel, PanelKeeper } from '../panel.js';
import type { FromWavesPage, ToWavesPage } from './messages.js';
import { RememberedChoices } from './remembered.js';

/** While keys are pressed faster than this, in milliseconds, nothing is simulated. */
const typingPause = 150;
/** After so long, in milliseconds, the page says that it waits. */
const patience = 400;

/** A bus that the view is asked to show, until it does. */
export interface WantedBus {
  uri?: string;
  position?: Place | undefined;
}

export class WavesKeeper implements PanelKeeper {
  readonly #client: Client;
  readonly #panel: Panel<ToWavesPage, FromWavesPage>;
  readonly #wanted: WantedBus;
  readonly #remembered: RememberedChoices;
  readonly #parts: Disposable;
  /** What was asked last, to be called off by what makes it out of date. */
  #asked = new CancellationTokenSource();
  #choices: WaveChoices = { view: 'pattern' };
  /** The text that the choices are for. */
  #chosenFor = '';
  #size: { readonly width: number; readonly height: number } | undefined;
  #lastEdit = 0;
  /** What the page shows. */
  #page: WavesPage | null = null;

  constructor(client: Client, panel: Panel<ToWavesPage, FromWavesPage>, wanted: WantedBus) {
    this.#client = client;
    this.#panel = panel;
    this.#wanted = wanted;
    this.#remembered = new RememberedChoices(client.memory);
    this.#parts = Disposable.from(
      panel.onMessage((message) => void this.#take(message)),
      workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (document.languageId !== 'fieldpair' || !contentChanges.length) return;
        this.#lastEdit = Date.now();
        this.#asked.cancel();
      }),
    );
  }

  async refresh(): Promise<void> {
    // The page tells its size first; what is drawn depends on it.
    if (!this.#size) return;
    await this.#typingPaused();
    const asked = this.#begin();
    const waiting = setTimeout(() => this.#panel.post({ busy: true }), patience);
    try {
      const page = await this.#pageOf(asked);
      if (asked.token.isCancellationRequested) return;
      this.#page = page;
      this.#panel.post({ page, choices: this.#choices });
      clearTimeout(waiting);
      const advice = page && (await this.#client.request('fieldpair/wavesAdvice', this.#question(), asked.token));
      if (!asked.token.isCancellationRequested) this.#panel.post({ advice: advice ?? [] });
    } catch (error) {
      // Whoever called it off has asked anew.
      if (asked.token.isCancellationRequested) return;
      this.#panel.post({ failure: error instanceof Error ? error.message : String(error) });
      throw error;
    } finally {
      clearTimeout(waiting);
    }
  }

  /** Shows the bus that is wanted now. */
  showWanted(): void {
    this.#asked.cancel();
    this.#panel.refresh();
  }

  dispose(): void {
    this.#asked.cancel();
    this.#parts.dispose();
  }

  #begin(): CancellationTokenSource {
    this.#asked.cancel();
    this.#asked = new CancellationTokenSource();
    return this.#asked;
  }

  async #typingPaused(): Promise<void> {
    for (;;) {
      const left = this.#lastEdit + typingPause - Date.now();
      if (left <= 0) return;
      await new Promise((resolve) => setTimeout(resolve, left));
    }
  }

  async #pageOf({ token }: CancellationTokenSource): Promise<WavesPage | null> {
    const uri = this.#panel.source.toString();
    const position = this.#wanted.uri === uri ? this.#wanted.position : undefined;
    if (this.#chosenFor !== uri || position) {
      this.#choices = { view: this.#choices.view };
      this.#chosenFor = uri;
    }
    const page = await this.#client.request('fieldpair/waves', this.#question(position), token);
    if (!page || (this.#choices.store === page.store && this.#choices.bus === page.bus)) return page;
    // A bus that was not shown before: as it was looked at last time.
    this.#wanted.position = undefined;
    const { store, bus } = page;
    const remembered = this.#remembered.of(uri, store, bus);
    this.#choices = { ...(remembered ?? { view: this.#choices.view }), store, bus };
    return remembered ? this.#client.request('fieldpair/waves', this.#question(), token) : page;
  }

  #question(position?: Place): WavesParams {
    const { width, height } = this.#size ?? { width: 0, height: 0 };
    return {
      uri: this.#panel.source.toString(),
      choices: this.#choices,
      width,
      height,
      ...(position ? { position } : {}),
    };
  }

  async #take(message: FromWavesPage): Promise<void> {
    if ('keep' in message) {
      await this.#keep(message.keep);
      return;
    }
    if ('goTo' in message) {
      await this.#goTo(message.goTo);
      return;
    }
    if ('size' in message) this.#size = message.size;
    else await this.#choose(message.choices);
    this.#asked.cancel();
    this.#panel.refresh();
  }

  async #choose(choices: WaveChoices): Promise<void> {
    const isOtherBus = choices.store !== this.#choices.store || choices.bus !== this.#choices.bus;
    const uri = this.#panel.source.toString();
    const { store, bus, span: _, ...lasting } = choices;
    if (store === undefined || bus === undefined) return;
    if (isOtherBus) {
      this.#choices = { ...(this.#remembered.of(uri, store, bus) ?? { view: choices.view }), store, bus };
    } else {
      this.#choices = choices;
      await this.#remembered.keep(uri, store, bus, lasting);
    }
  }

  async #goTo(name: string): Promise<void> {
    const landing = this.#page?.landings.find((one) => one.name === name);
    if (!landing) return;
    const { line, character } = landing.position;
    const selection = new Range(line, character, line, character);
    const viewColumn = this.#panel.editor?.viewColumn ?? ViewColumn.One;
    await window.showTextDocument(Uri.parse(landing.uri), { selection, viewColumn });
  }

  async #keep(format: 'svg' | 'csv'): Promise<void> {
    try {
      const { source } = this.#panel;
      const file = await this.#client.request('fieldpair/wavesFile', {
        ...this.#question(),
        format,
        width: 960,
        height: 480,
      });
      if (!file) return;
      const filters = format === 'svg' ? { 'SVG picture': ['svg'] } : { 'CSV table': ['csv'] };
      const folder =
        source.scheme === 'file' ? Uri.joinPath(source, '..') : (workspace.workspaceFolders?.[0]?.uri ?? Uri.file('.'));
      const target = await window.showSaveDialog({
        defaultUri: Uri.joinPath(folder, file.name),
        filters,
        title: 'Save Waveforms',
      });
      if (target) await workspace.fs.writeFile(target, new TextEncoder().encode(file.text));
    } catch (error) {
      void window.showErrorMessage(
        `Fieldpair: the waveforms were not saved: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  }
}
