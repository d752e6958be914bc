/** The course of a bus: what its pen draws through `from`, runs and taps. */
import type { Cable, LengthUnit, Pen, Place, Sourced } from '@fieldpair/shared';
import type { Area, BusStatement, From, Quantity, Run as RunTree } from '../generated/reader.js';
import { added } from '../short-list.js';
import type { LandingDraft } from './landing-draft.js';
import type { Landings } from './landings.js';
import type { Notes } from './notes.js';
import { writesFeet } from './quantities.js';
import { RunDraft, readRun } from './run.js';
import type { CatalogueScope } from './scope.js';

export class Course {
  readonly runs: RunDraft[] = [];
  readonly pens: Pen[] = [];
  readonly areas: Place[] = [];
  /** What is said beside the course, for when all landings are known. */
  readonly remarks: BusStatement[] = [];
  /** A statement of the course could not be understood. */
  damaged = false;
  /** A length was read and not understood. */
  unclear = false;
  readonly #bus: string;
  readonly #landings: Landings;
  readonly #cable: Cable | undefined;
  readonly #scope: CatalogueScope;
  readonly #notes: Notes;
  /** The landing that the next run leaves. */
  #pen: LandingDraft | undefined;
  /** The heading that the next statements are written under. */
  #area: Sourced<string> | undefined;
  /** Lengths in feet less those in metres; where it is even, the first one counts. */
  #feet = 0;
  #beganInFeet: boolean | undefined;

  constructor(bus: string, landings: Landings, cable: Cable | undefined, scope: CatalogueScope, notes: Notes) {
    this.#bus = bus;
    this.#landings = landings;
    this.#cable = cable;
    this.#scope = scope;
    this.#notes = notes;
  }

  /** The unit that most lengths are written in. */
  get lengthUnit(): LengthUnit {
    return this.#feet > 0 || (this.#feet === 0 && this.#beganInFeet) ? 'ft' : 'm';
  }

  follow(statements: readonly BusStatement[]): void {
    for (const statement of statements) {
      if (statement.type === 'Run') this.#pull(statement);
      else if (statement.type === 'From') this.#begin(statement);
      else if (statement.type === 'Area') this.#enter(statement);
      else this.remarks.push(statement);
    }
  }

  #begin(statement: From): void {
    const place = this.#notes.place(statement);
    this.#pen = statement.landing && this.#landings.visit(statement.landing, 'from', place, this.#area);
    if (this.#pen) this.pens.push({ landing: this.#pen.index, place });
    else this.damaged = true;
  }

  #enter(statement: Area): void {
    const place = this.#notes.place(statement);
    this.areas.push(place);
    const name = statement.name?.text ?? '';
    // An empty name ends an area without beginning another.
    this.#area = name.trim() === '' ? undefined : { value: name, place };
  }

  #pull(statement: RunTree): void {
    const { landing, tap } = statement;
    const pen = this.#pen;
    const place = this.#notes.between(statement.start, statement.end);
    const target = landing && this.#landings.visit(landing, tap ? 'tap' : 'to', place, this.#area);
    if (landing && !target) this.damaged = true;
    if (statement.length) this.#count(statement.length);
    if (!pen) {
      this.#reportNoPen(place);
      if (!tap) this.#pen = target;
      return;
    }
    const run = new RunDraft(this.runs.length, pen.index, place, tap);
    if (target) run.to = target.index;
    if (!readRun(statement, run, this.#cable, this.#scope, this.#notes)) this.unclear = true;
    this.runs.push(run);
    if (run.spare) return;
    pen.runs = added(pen.runs, run.index);
    if (!target) return;
    if (target !== pen) target.runs = added(target.runs, run.index);
    if (!tap) this.#pen = target;
  }

  #count(length: Quantity): void {
    const inFeet = writesFeet(length);
    if (inFeet === undefined) return;
    this.#beganInFeet ??= inFeet;
    this.#feet += inFeet ? 1 : -1;
  }

  /** Nothing was landed on yet: the text lacks its first `from`. Told once. */
  #reportNoPen(place: Place): void {
    if (!this.damaged) {
      this.#notes.report(
        'pen-missing',
        `this run starts nowhere; write from LANDING before the first run of bus ${this.#bus}`,
        place,
        { bus: this.#bus },
      );
    }
    this.damaged = true;
  }
}
