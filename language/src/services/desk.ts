/**
 * What every editor service works on: the project, the settings, and the way between offsets and an editor's
 * positions. Files are named by their URIs.
 */
import { type Bus, type BusStudy, createStudy, type Place, type Store } from '@fieldpair/shared';
import { TextDocument } from 'langium';
import type { Location, Position, Range } from 'vscode-languageserver';
import type { NameUse, SourceText } from '../build/source.js';
import type { Project } from '../workspace/project.js';
import { defaultEditorSettings, type EditorSettings } from './settings.js';

/** A bus together with the store that it is in. */
export interface BusInStore {
  readonly store: Store;
  readonly bus: Bus;
}

export class Desk {
  readonly project: Project;
  /** Where the pages of the rules are, as the start of a URI; unset where the editor has none. */
  rulePages: string | undefined;
  /** Whether the editor follows links to our commands in hovers. */
  commandLinks = false;
  #settings = defaultEditorSettings;
  readonly #documents = new WeakMap<SourceText, TextDocument>();
  #studies = new WeakMap<Bus, BusStudy>();

  constructor(project: Project) {
    this.project = project;
  }

  get settings(): EditorSettings {
    return this.#settings;
  }

  set settings(settings: EditorSettings) {
    this.#settings = settings;
    this.#studies = new WeakMap();
  }

  rangeOf({ file, start, end }: Place): Range {
    const document = this.#documentOf(file);
    return { start: document.positionAt(start), end: document.positionAt(end) };
  }

  locationOf(place: Place): Location {
    return { uri: place.file, range: this.rangeOf(place) };
  }

  offsetOf(file: string, position: Position): number {
    return this.#documentOf(file).offsetAt(position);
  }

  /** The study of a bus, kept as long as its network is. */
  studyOf({ store, bus }: BusInStore): BusStudy {
    const known = this.#studies.get(bus);
    if (known) return known;
    const { lengthUnit } = this.#settings;
    const study = createStudy(store, bus, lengthUnit === 'asWritten' ? {} : { lengthUnit });
    this.#studies.set(bus, study);
    return study;
  }

  /** The buses that are written in a file, in the order of the text. */
  busesIn(file: string): BusInStore[] {
    const stores = this.project.storesOf(file);
    return stores.flatMap((store) =>
      store.buses.filter(({ blockPlace }) => blockPlace.file === file).map((bus) => ({ store, bus })),
    );
  }

  busAt(file: string, offset: number): BusInStore | undefined {
    return this.busesIn(file).find(({ bus }) => contains(bus.blockPlace, offset));
  }

  /** The mention of a name under a position; an offset just behind the name counts. */
  useAt(file: string, offset: number): NameUse | undefined {
    return this.project.usesOf(file).find(({ place }) => contains(place, offset));
  }

  #documentOf(file: string): TextDocument {
    const source = this.project.sourceOf(file);
    if (!source) return TextDocument.create(file, 'fieldpair', 0, '');
    let document = this.#documents.get(source);
    if (!document) {
      document = TextDocument.create(file, 'fieldpair', 0, source.text);
      this.#documents.set(source, document);
    }
    return document;
  }
}

export const contains = ({ start, end }: Place, offset: number): boolean => start <= offset && offset <= end;
