/** The landings of one bus while it is built: which mention is which landing, and what is said about each. */
import {
  type Bus,
  type Device,
  type Place,
  type Port,
  type Sourced,
  soleServingPort,
  type Visit,
} from '@fieldpair/shared';
import type { LandingReference, Landing as LandingTree, Name } from '../generated/reader.js';
import { added, none } from '../short-list.js';
import { unknownPort } from './device.js';
import type { DoubleNodes } from './double-node.js';
import { LandingDraft } from './landing-draft.js';
import { readProperty } from './landing-properties.js';
import { NodeDraft } from './node-draft.js';
import { reportNotOnBus } from './not-on-bus.js';
import type { Notes, Spot } from './notes.js';
import { didYouMean, nearest, renameFixes } from './suggest.js';

export class Landings {
  readonly all: LandingDraft[] = [];
  /** Those whose ports have a bias that cannot be switched off; hardly ever any. */
  readonly biased: LandingDraft[] = [];
  /** A value of a landing was read and not understood. */
  unclear = false;
  readonly #splices = new Map<string, LandingDraft>();
  readonly #strangers = new Map<string, NodeDraft>();
  readonly #index: number;
  /** The device that was landed on last, and its port for this bus where none is written. */
  #device: Device | undefined;
  #portOfDevice: Port | undefined;
  /** Declared nodes that a name of no node may have meant. */
  readonly #meant = new Set<string>();
  readonly #bus: string;
  readonly #kind: Bus['kind'];
  readonly #nodes: ReadonlyMap<string, NodeDraft>;
  readonly #doubles: DoubleNodes<NodeDraft>;
  readonly #notes: Notes;

  /** @param index of the bus in its store */
  constructor(
    index: number,
    bus: string,
    kind: Bus['kind'],
    nodes: ReadonlyMap<string, NodeDraft>,
    doubles: DoubleNodes<NodeDraft>,
    notes: Notes,
  ) {
    this.#index = index;
    this.#bus = bus;
    this.#kind = kind;
    this.#nodes = nodes;
    this.#doubles = doubles;
    this.#notes = notes;
  }

  /**
   * The landing that a statement mentions, made at its first mention; undefined where its name is missing.
   * @param statementPlace the place of the statement.
   * @param area that the statement is written under
   */
  visit(
    tree: LandingTree,
    statement: Visit['statement'],
    statementPlace: Place,
    area?: Sourced<string>,
  ): LandingDraft | undefined {
    const notes = this.#notes;
    const reference = tree.splice ?? tree.node;
    if (!reference) return undefined;
    const draft = tree.splice ? this.#splice(tree.splice) : this.#landing(tree);
    if (!draft) return undefined;
    const isNew = draft.visits === none;
    if (area && isNew) draft.area = area;
    // The place of a landing is where it is mentioned first.
    const referencePlace = isNew ? draft.place : notes.between(reference.start, (tree.port ?? reference).end);
    draft.visits = added(draft.visits, {
      place: notes.between(tree.start, tree.end),
      referencePlace,
      statement,
      statementPlace,
    });
    for (const property of tree.properties) {
      if (!readProperty(property, draft, this.#bus, notes)) this.unclear = true;
    }
    return draft;
  }

  /** The landing that a reference names, or undefined, with a report, when it is not on this bus. */
  find(reference: LandingReference | undefined, what: string): LandingDraft | undefined {
    const name = reference?.node?.text;
    if (!reference?.node || name === undefined) return undefined;
    const notes = this.#notes;
    const splice = this.#splices.get(name);
    const node = this.#nodes.get(name) ?? this.#strangers.get(name);
    const candidates = splice ? [splice] : (node?.landingsOn(this.#index) ?? none);
    const port = reference.port?.text;
    const found = port === undefined ? candidates[0] : candidates.find((one) => one.port?.name === port);
    if (found) {
      notes.use(splice ? 'splice' : 'node', reference.node, found.node?.place ?? found.place);
      if (reference.port && found.port) notes.use('port', reference.port, found.port.place);
      return found;
    }
    // A slip in the name of its landing was told.
    if (!this.#meant.has(name)) reportNotOnBus(reference, this.#bus, this.all, what, notes);
    return undefined;
  }

  #splice(written: Name): LandingDraft | undefined {
    const name = written.text;
    if (name === undefined) return undefined;
    const known = this.#splices.get(name);
    if (known) {
      this.#notes.use('splice', written, known.place);
      return known;
    }
    this.#notes.declare('splice', written);
    const draft = this.#add(name, this.#notes.place(written));
    draft.splice = name;
    this.#splices.set(name, draft);
    return draft;
  }

  #landing({ node: written, port: writtenPort, device }: LandingTree): LandingDraft | undefined {
    const name = written?.text;
    if (!written || name === undefined) return undefined;
    // A splice that was made before may be mentioned by its bare name.
    const splice = this.#splices.size === 0 ? undefined : this.#splices.get(name);
    if (splice && !this.#nodes.has(name)) {
      this.#notes.use('splice', written, splice.place);
      return splice;
    }
    const double = this.#doubles.size === 0 ? undefined : this.#doubles.get(written);
    const node = double ?? this.#node(written, name, device !== undefined);
    const landed = node.landingsOn(this.#index);
    const port = this.#port(node, writtenPort);
    if (!writtenPort && landed.length === 1) return landed[0];
    const label = writtenPort?.text === undefined ? name : `${name}.${writtenPort.text}`;
    // Ports are told apart by what they are, and by what is written where that is none.
    for (const known of landed) if (known.port === port && (port || known.name === label)) return known;
    const draft = this.#add(label, this.#placeOf(written, writtenPort, node));
    draft.node = node;
    if (port) draft.port = port;
    if (writtenPort) draft.portPlace = this.#notes.place(writtenPort);
    node.setLandingsOn(this.#index, added(landed, draft));
    // Who mentions the name again means the first that this bus has of it.
    const first = double && this.#nodes.get(name);
    if (first?.landingsOn(this.#index).length === 0) first.setLandingsOn(this.#index, [draft]);
    if (port?.bias?.mode === 'fixed') this.biased.push(draft);
    if (port?.terminator?.mode === 'fixed') {
      const { mode: _, ...values } = port.terminator;
      draft.terminations = added(draft.terminations, { means: 'fixed', ...values });
    }
    return draft;
  }

  /** The place of a reference to a node, which for most landings is where the node is declared. */
  #placeOf(written: Spot, port: Spot | undefined, { place }: NodeDraft): Place {
    const isDeclared = !port && place.start === written.start && place.file === this.#notes.source.file;
    return isDeclared ? place : this.#notes.between(written.start, (port ?? written).end);
  }

  #node(written: Spot & { text: string | undefined }, name: string, declares: boolean): NodeDraft {
    const known = this.#nodes.get(name);
    if (known) {
      // The mention that declares the node was noted when the nodes were collected.
      if (!declares) this.#notes.use('node', written, known.place);
      return known;
    }
    let stranger = this.#strangers.get(name);
    if (!stranger) {
      const place = this.#notes.place(written);
      stranger = new NodeDraft(name, place);
      this.#strangers.set(name, stranger);
      const likely = nearest(name, this.#nodes.keys());
      for (const one of likely) this.#meant.add(one);
      const message = `no node ${name} is declared; write its device where it is landed first (${name} : DEVICE)${didYouMean(likely)}`;
      this.#notes.report('unknown-name', message, place, {
        bus: this.#bus,
        at: name,
        fixes: () => renameFixes(place, likely),
      });
    }
    return stranger;
  }

  #port(node: NodeDraft, written: LandingTree['port']): Port | undefined {
    const { device } = node;
    if (!device) return undefined;
    if (written) {
      const found = device.ports.find(({ name }) => name === written.text);
      if (found) this.#notes.use('port', written, found.place);
      else if (written.text !== undefined) unknownPort(written, device.name, device.ports, this.#notes, this.#bus);
      return found;
    }
    // Nearly all landings are on the same device as the one before; a revision may have other ports enabled.
    if (device === this.#device && !node.revision) return this.#portOfDevice;
    const port = soleServingPort(node, this.#kind);
    if (!node.revision) {
      this.#device = device;
      this.#portOfDevice = port;
    }
    return port;
  }

  #add(name: string, place: Place): LandingDraft {
    const draft = new LandingDraft(this.all.length, name, place);
    this.all.push(draft);
    return draft;
  }
}
