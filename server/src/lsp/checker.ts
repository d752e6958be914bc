/**
 * Checks files one after the other and publishes what is wrong: open files at once, the others behind them in slices
 * short enough that a keystroke never waits for them.
 */

import { type Desk, diagnosticsOf, openFindings } from '@fieldpair/language/services';
import type { Finding } from '@fieldpair/shared';
import type { Diagnostic } from 'vscode-languageserver';
import type { CheckStatus, FindingCounts, WorkspaceCheck } from '../protocol.js';

/** How long one slice may take, in milliseconds; about what a person does not notice. */
const slice = 10;
/** After a keystroke, closed files wait until typing has paused for so long, in milliseconds. */
const pause = 200;

interface FileCheck {
  readonly findings: FindingCounts;
  readonly stores: number;
  readonly buses: number;
}

/** Where results go and what decides the order. */
export interface CheckerHost {
  readonly desk: Desk;
  readonly isOpen: (file: string) => boolean;
  readonly publish: (file: string, diagnostics: Diagnostic[]) => void;
  readonly tell: (status: CheckStatus) => void;
  readonly failed: (error: unknown) => void;
}

export class Checker {
  readonly #host: CheckerHost;
  readonly #checked = new Map<string, FileCheck>();
  readonly #published = new Set<string>();
  readonly #urgent = new Set<string>();
  readonly #later = new Set<string>();
  #waiting: (() => void)[] = [];
  #stopTimer: (() => void) | undefined;
  #began: number | undefined;
  #last = { milliseconds: 0, at: '' };

  constructor(host: CheckerHost) {
    this.#host = host;
  }

  /** Marks files whose answers may have changed. */
  touch(files: Iterable<string>): void {
    for (const file of files) (this.#host.isOpen(file) ? this.#urgent : this.#later).add(file);
    this.#schedule();
  }

  /** Whether a file's turn is still to come. */
  awaits(file: string): boolean {
    return this.#urgent.has(file) || this.#later.has(file);
  }

  /** Takes back what was published about a file that is gone. */
  forget(file: string): void {
    this.#urgent.delete(file);
    this.#later.delete(file);
    this.#checked.delete(file);
    if (this.#published.delete(file)) this.#host.publish(file, []);
  }

  /** Resolves when nothing is left to check. */
  settled(): Promise<void> {
    if (!this.#urgent.size && !this.#later.size && this.#began === undefined) return Promise.resolve();
    return new Promise((resolve) => {
      this.#waiting.push(resolve);
      this.#schedule(0);
    });
  }

  totals(): WorkspaceCheck {
    let [stores, buses, error, warning, info] = [0, 0, 0, 0, 0];
    for (const file of this.#checked.values()) {
      stores += file.stores;
      buses += file.buses;
      error += file.findings.error;
      warning += file.findings.warning;
      info += file.findings.info;
    }
    return { files: this.#checked.size, stores, buses, findings: { error, warning, info } };
  }

  #schedule(patience = pause): void {
    if (this.#urgent.size || patience === 0 || this.#waiting.length) {
      this.#stopTimer?.();
      const soon = setImmediate(() => this.#run());
      this.#stopTimer = () => clearImmediate(soon);
    } else if (this.#later.size) {
      this.#stopTimer?.();
      const timer = setTimeout(() => this.#run(), patience);
      this.#stopTimer = () => clearTimeout(timer);
    }
  }

  #run(): void {
    this.#stopTimer = undefined;
    const start = performance.now();
    if (this.#began === undefined) {
      this.#began = start;
      this.#tell(true);
    }
    for (const files of [this.#urgent, this.#later]) {
      for (const file of files) {
        files.delete(file);
        this.#check(file);
        if (performance.now() - start > slice && (this.#urgent.size || this.#later.size)) {
          this.#schedule(0);
          return;
        }
      }
    }
    this.#refreshCatalogues();
    this.#last = { milliseconds: Math.round(performance.now() - this.#began), at: new Date().toISOString() };
    this.#began = undefined;
    this.#tell(false);
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const done of waiting) done();
  }

  /** Whether stores use what a catalogue declares is known only now, after all of them. */
  #refreshCatalogues(): void {
    const { desk } = this.#host;
    for (const file of desk.project.catalogueFiles()) {
      const told = this.#checked.get(file)?.findings.info;
      if (told !== undefined && told !== countsOf(openFindings(desk, file)).info) this.#check(file);
    }
  }

  #check(file: string): void {
    const { desk, publish, failed } = this.#host;
    try {
      const findings = openFindings(desk, file);
      const stores = desk.project.storesOf(file).filter(({ place }) => place.file === file);
      const buses = desk.busesIn(file).length;
      this.#checked.set(file, { findings: countsOf(findings), stores: stores.length, buses });
      const open = this.#host.isOpen(file);
      if (findings.length || open || this.#published.has(file)) publish(file, diagnosticsOf(desk, findings));
      if (findings.length) this.#published.add(file);
      else this.#published.delete(file);
      // Nobody looks at the network of a closed file; only the answers stay.
      if (!open) desk.project.digest(file);
    } catch (error) {
      failed(error);
    }
  }

  #tell(checking: boolean): void {
    const { files, stores, findings } = this.totals();
    this.#host.tell({ checking, files, stores, findings, ...this.#last });
  }
}

function countsOf(findings: readonly Finding[]): FindingCounts {
  const counts = { error: 0, warning: 0, info: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}
