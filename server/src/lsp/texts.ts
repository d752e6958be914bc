/**
 * Follows texts: open ones as the editor has them, the others as they are on disk. Takes the place of Langium's own
 * handler, which would parse and link every file of the workspace.
 */
import type { Project } from '@fieldpair/language';
import type { TextDocument } from 'langium';
import type { DocumentUpdateHandler } from 'langium/lsp';
import {
  type DidChangeWatchedFilesParams,
  Emitter,
  FileChangeType,
  type TextDocumentChangeEvent,
} from 'vscode-languageserver';
import type { Checker } from './checker.js';
import { disk, fileOf, findFiles } from './disk.js';

/** How many files are read before others have their turn. */
const batch = 20;

export class Texts implements DocumentUpdateHandler {
  readonly #project: Project;
  readonly #checker: Checker;
  readonly #open: Set<string>;
  readonly #typed: () => void;
  readonly #onWatchedFilesChange = new Emitter<DidChangeWatchedFilesParams>();
  readonly onWatchedFilesChange = this.#onWatchedFilesChange.event;
  folders: readonly string[] = [];

  /**
   * @param open the files that are open; kept up to date here
   * @param typed called whenever an open file changes
   */
  constructor(project: Project, checker: Checker, open: Set<string>, typed: () => void) {
    this.#project = project;
    this.#checker = checker;
    this.#open = open;
    this.#typed = typed;
  }

  didChangeContent({ document }: TextDocumentChangeEvent<TextDocument>): void {
    const file = fileOf(document.uri);
    this.#open.add(file);
    this.#typed();
    this.#take(file, document.getText());
  }

  didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
    const file = fileOf(document.uri);
    this.#open.delete(file);
    this.#reread(file);
  }

  didChangeWatchedFiles(params: DidChangeWatchedFilesParams): void {
    this.#onWatchedFilesChange.fire(params);
    for (const { uri, type } of params.changes) {
      const file = fileOf(uri);
      if (this.#open.has(file)) continue;
      if (type === FileChangeType.Deleted) this.#drop(file);
      else if (file.endsWith('.pair')) this.#reread(file);
    }
  }

  /** Reads all `.pair` files of the workspace that are not open, and has them checked. */
  async readWorkspace(): Promise<void> {
    const files = await findFiles(this.folders);
    const found = new Set(files);
    for (const file of this.#project.files()) if (!found.has(file) && !this.#open.has(file)) this.#drop(file);
    const known = new Set(this.#project.files());
    for (const [index, file] of files.entries()) {
      if (this.#open.has(file)) continue;
      this.#project.add(file);
      // A file that is new is read when its turn to be checked comes. One that others were checked against may have
      // changed, which those checks have to see.
      if (known.has(file) && !this.#checker.awaits(file)) this.#project.problemOf(file);
      if (index % batch === batch - 1) await new Promise((resolve) => setImmediate(resolve));
    }
    this.#checker.touch(this.#project.files());
  }

  #take(file: string, text?: string): void {
    const before = this.#project.dependents(file);
    this.#project.add(file, text);
    // Whoever depends on it may be asked first, and must not be answered from what the file was before.
    this.#project.problemOf(file);
    this.#checker.touch(new Set([file, ...before, ...this.#project.dependents(file)]));
  }

  #reread(file: string): void {
    if ('problem' in disk.read(file)) this.#drop(file);
    else this.#take(file);
  }

  #drop(file: string): void {
    const before = this.#project.dependents(file);
    this.#project.remove(file);
    this.#checker.forget(file);
    this.#checker.touch(before);
  }
}
