/** The landings of one bus while it is built: which mention is which landing, and what is said about each. */
import {
  type Bus,
  type Landing,
  type LandingTermination,
  type Place,
  type Port,
  type Sourced,
  type StoreNode,
  servingPorts,
} from '@fieldpair/shared';
import type { LandingReference, Landing as LandingTree } from '../generated/reader.js';
import { unknownPort } from './device.js';
import type { Notes, Spot } from './notes.js';
import { terminationOf } from './port.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';

export type LandingDraft = {
  -readonly [Key in keyof Landing]: Landing[Key];
} & {
  visits: Landing['visits'][number][];
  terminations: LandingTermination[];
  otherAddresses: Sourced<number>[];
  runs: number[];
};

export class Landings {
  readonly all: LandingDraft[] = [];
  readonly #byKey = new Map<string, LandingDraft>();
  readonly #byNode = new Map<string, LandingDraft[]>();
  readonly #strangers = new Map<string, StoreNode>();
  readonly #bus: string;
  readonly #kind: Bus['kind'];
  readonly #nodes: ReadonlyMap<string, StoreNode>;
  readonly #notes: Notes;

  constructor(bus: string, kind: Bus['kind'], nodes: ReadonlyMap<string, StoreNode>, notes: Notes) {
    this.#bus = bus;
    this.#kind = kind;
    this.#nodes = nodes;
    this.#notes = notes;
  }

  /** The landing that a statement mentions, made at its first mention; undefined where its name is missing. */
  visit(tree: LandingTree, statement: 'from' | 'to' | 'tap', at: Spot): LandingDraft | undefined {
    const notes = this.#notes;
    const draft = tree.splice ? this.#splice(tree) : this.#landing(tree);
    if (!draft) return undefined;
    const reference = tree.splice ?? tree.node;
    if (!reference) return undefined;
    draft.visits.push({
      place: notes.place(tree),
      referencePlace: notes.place({ start: reference.start, end: (tree.port ?? reference).end }),
      statement,
      statementPlace: notes.place(at),
    });
    for (const property of tree.properties) this.#read(property, draft);
    return draft;
  }

  /** The landing that a reference names, or undefined, with a report, when it is not on this bus. */
  find(reference: LandingReference | undefined, what: string): LandingDraft | undefined {
    const name = reference?.node?.text;
    if (!reference?.node || name === undefined) return undefined;
    const notes = this.#notes;
    const splice = this.#byKey.get(`splice ${name}`);
    const candidates = splice ? [splice] : (this.#byNode.get(name) ?? []);
    const port = reference.port?.text;
    const found = port === undefined ? candidates[0] : candidates.find((one) => one.port?.name === port);
    if (found) {
      notes.use(splice ? 'splice' : 'node', reference.node, found.node?.place ?? found.place);
      if (reference.port && found.port) notes.use('port', reference.port, found.port.place);
      return found;
    }
    const written = port === undefined ? name : `${name}.${port}`;
    const place = notes.place(reference);
    const likely = nearest(
      written,
      this.all.map((one) => one.name),
    );
    notes.report('not-on-bus', `${written} is not landed on bus ${this.#bus}, so ${what}${didYouMean(likely)}`, place, {
      bus: this.#bus,
      at: written,
      fixes: () => renameFixesRaw(place, likely),
    });
    return undefined;
  }

  #splice({ splice }: LandingTree): LandingDraft | undefined {
    const name = splice?.text;
    if (!splice || name === undefined) return undefined;
    const known = this.#byKey.get(`splice ${name}`);
    if (known) {
      this.#notes.use('splice', splice, known.place);
      return known;
    }
    this.#notes.declare('splice', splice);
    const draft = this.#add(`splice ${name}`, name, this.#notes.place(splice));
    draft.splice = name;
    return draft;
  }

  #landing({ node: written, port: writtenPort, device }: LandingTree): LandingDraft | undefined {
    const name = written?.text;
    if (!written || name === undefined) return undefined;
    // A splice that was made before may be mentioned by its bare name.
    const splice = this.#byKey.get(`splice ${name}`);
    if (splice && !this.#nodes.has(name)) {
      this.#notes.use('splice', written, splice.place);
      return splice;
    }
    const node = this.#node(written, name, device !== undefined);
    const landed = this.#byNode.get(name) ?? [];
    const port = this.#port(node, writtenPort);
    if (!writtenPort && landed.length === 1) return landed[0];
    const key = `node ${name} ${port?.name ?? (writtenPort?.text === undefined ? '' : `?${writtenPort.text}`)}`;
    const known = this.#byKey.get(key);
    if (known) return known;
    const label = writtenPort?.text === undefined ? name : `${name}.${writtenPort.text}`;
    const draft = this.#add(key, label, this.#notes.place({ start: written.start, end: (writtenPort ?? written).end }));
    draft.node = node;
    if (port) draft.port = port;
    if (writtenPort) draft.portPlace = this.#notes.place(writtenPort);
    this.#byNode.set(name, [...landed, draft]);
    if (port?.terminator?.mode === 'fixed') {
      const { mode: _, ...values } = port.terminator;
      draft.terminations.push({ means: 'fixed', ...values });
    }
    return draft;
  }

  #node(written: Spot & { text: string | undefined }, name: string, declares: boolean): StoreNode {
    const known = this.#nodes.get(name);
    if (known) {
      // The mention that declares the node was noted when the nodes were collected.
      if (!declares) this.#notes.use('node', written, known.place);
      return known;
    }
    let stranger = this.#strangers.get(name);
    if (!stranger) {
      const place = this.#notes.place(written);
      stranger = { name, place };
      this.#strangers.set(name, stranger);
      const likely = nearest(name, this.#nodes.keys());
      const message = `no node ${name} is declared; write its device where it is landed first (${name} : DEVICE)${didYouMean(likely)}`;
      this.#notes.report('unknown-name', message, place, {
        bus: this.#bus,
        at: name,
        fixes: () => renameFixes(place, likely),
      });
    }
    return stranger;
  }

  #port(node: StoreNode, written: LandingTree['port']): Port | undefined {
    const { device } = node;
    if (!device) return undefined;
    if (written) {
      const found = device.ports.find(({ name }) => name === written.text);
      if (found) this.#notes.use('port', written, found.place);
      else if (written.text !== undefined) unknownPort(written, device.name, device.ports, this.#notes, this.#bus);
      return found;
    }
    const { fit, poor } = servingPorts(node, { kind: this.#kind });
    const choices = fit.length ? fit : poor;
    return choices.length === 1 ? choices[0] : undefined;
  }

  #add(key: string, name: string, place: Place): LandingDraft {
    const draft: LandingDraft = {
      index: this.all.length,
      name,
      place,
      visits: [],
      otherAddresses: [],
      terminations: [],
      shield: 'through',
      runs: [],
    };
    this.all.push(draft);
    this.#byKey.set(key, draft);
    return draft;
  }

  #read(property: LandingTree['properties'][number], draft: LandingDraft): void {
    const notes = this.#notes;
    const place = notes.place(property);
    switch (property.type) {
      case 'LandingAddress': {
        if (property.address?.value === undefined) break;
        const value = property.address.negative ? -property.address.value : property.address.value;
        const address = { value, place: notes.place(property.address) };
        if (!draft.address) draft.address = address;
        else if (draft.address.value !== value) {
          draft.otherAddresses.push(address);
          notes.report(
            'statement-repeated',
            `${draft.name} has address ${value} here and ${draft.address.value} before; keep the one that is set on the device`,
            place,
            {
              bus: this.#bus,
              at: draft.name,
              related: [{ message: `address ${draft.address.value} is said here`, place: draft.address.place }],
            },
          );
        }
        break;
      }
      case 'Terminate': {
        if (property.switched) {
          draft.switchRequested = place;
          if (draft.port?.terminator?.mode === 'switch') {
            const { mode: _, ...values } = draft.port.terminator;
            draft.terminations.push({ means: 'switch', ...values, place });
          } else if (draft.port || draft.splice !== undefined) draft.missingSwitch = place;
        } else {
          const values = terminationOf(property.resistance, property.capacitance, notes);
          if (values) draft.terminations.push({ means: 'resistor', ...values, place });
        }
        break;
      }
      case 'SwitchOff':
        draft.switchedOff = place;
        break;
      case 'Crossed':
        draft.crossed = place;
        break;
      case 'LandingShield':
        if (property.treatment) {
          draft.shield = property.treatment;
          draft.shieldPlace = place;
        }
        break;
      case 'LandingRevision':
        break; // Collected with the nodes.
    }
  }
}

/** References may hold a dot, so they are written as they are. */
const renameFixesRaw = (place: Place, names: readonly string[]) =>
  names.map((name) => ({
    title: `Change to ${name}`,
    safe: false,
    edits: [{ kind: 'write' as const, place, text: name }],
  }));
