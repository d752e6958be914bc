/**
 * The network: what a store's wiring is, as plain data.
 *
 * The language builds it from text; rules, figures, documents and drawings read it. It is frozen by convention:
 * nothing changes a network after it was built; an edit makes a new one. Positions into arrays (`LandingIndex`,
 * `RunIndex`) link its parts, so that it can be copied, sent to a worker or compared as it is.
 *
 * Everything keeps the {@link Place} in the text that it came from, and a value that the text leaves out or gets
 * wrong is absent, never guessed: whoever needs it says so.
 */
import type {
  BusKind,
  Cable,
  CanGuideName,
  ContactWiring,
  Device,
  Place,
  Port,
  Sourced,
  Termination,
} from './catalogue.js';
import type { Amperes, BitsPerSecond, Celsius, LengthUnit, Metres, Ohms, Ratio, Volts } from './quantity.js';

export * from './catalogue.js';

export type LandingIndex = number;
export type RunIndex = number;
export type BusIndex = number;

/** One device installed in a store. `device` is absent when its type is unknown or was not given. */
export interface StoreNode {
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
  /** Where its name is declared. */
  readonly place: Place;
  readonly device?: Device;
  /** Where the device's name is written, if anywhere. */
  readonly devicePlace?: Place;
  readonly revision?: Sourced<string>;
  /** Where a revision is written, even one that its device does not come in. */
  readonly revisionPlace?: Place;
}

/** What happens to the cable shields at a landing. */
export type ShieldTreatment =
  /** Joined, and landed on the device's shield terminal where there is one. */
  | 'through'
  /** Cut: the shields of the cables that meet here are not joined. */
  | 'open'
  /** Joined, but kept off the device. */
  | 'floating';

/** A terminator that a landing carries. */
export interface LandingTermination extends Termination {
  readonly means: 'switch' | 'resistor' | 'fixed';
  /** Absent for a terminator that is fixed inside the device and that no text switches on. */
  readonly place?: Place;
}

/**
 * A point of a bus where cable is landed: a port of a node, or a splice. A landing that the text visits several
 * times is one landing; `visits` lists the places in the order of the text.
 */
export interface Landing {
  readonly index: LandingIndex;
  readonly node?: StoreNode;
  /** Absent for a splice, an unknown device, and when no port or several fit. */
  readonly port?: Port;
  /** Where a port is written, even one that does not exist; absent when the port was left to be found. */
  readonly portPlace?: Place;
  /** The name of the splice, when it is one. */
  readonly splice?: string;
  /** `caseA1`, `head.field2` (the port where it was written) or the splice's name: how the text calls it. */
  readonly name: string;
  /** The first visit: where a finding about the landing as a whole points. */
  readonly place: Place;
  readonly visits: readonly Visit[];
  readonly address?: Sourced<number>;
  /** Further addresses, where visits contradict each other. */
  readonly otherAddresses: readonly Sourced<number>[];
  /** Every terminator that is on here, the built-in ones too. */
  readonly terminations: readonly LandingTermination[];
  /** True where a terminator is written whose value could not be understood, so that `terminations` lacks it. */
  readonly terminatorUnclear: boolean;
  /** Where `terminate switch` is written, whether or not there is such a switch. */
  readonly switchRequested?: Place;
  /** Where `terminate switch` asks for a switch that the device does not have. */
  readonly missingSwitch?: Place;
  /** Where `switch off` is written. */
  readonly switchedOff?: Place;
  readonly crossed?: Place;
  readonly shield: ShieldTreatment;
  readonly shieldPlace?: Place;
  /** The area of the store that its first visit is written under, at the heading that says so. */
  readonly area?: Sourced<string>;
  /** How the contact lies in its loop; absent where the text does not say. */
  readonly wiring?: ContactWiring;
  /** Runs that meet here; spare runs do not. */
  readonly runs: readonly RunIndex[];
}

/** One mention of a landing in the text. */
export interface Visit {
  /** The whole landing with its properties, e.g. `caseA1 : CaseBoard address 12`. */
  readonly place: Place;
  /** Just the reference: `caseA1`, `head.field2`. */
  readonly referencePlace: Place;
  /** Which statement visits it. */
  readonly statement: 'from' | 'to' | 'tap';
  /** The place of that statement. */
  readonly statementPlace: Place;
}

/** One piece of cable between two landings. */
export interface Run {
  readonly index: RunIndex;
  readonly from: LandingIndex;
  /** Absent for a run that ends nowhere. */
  readonly to?: LandingIndex;
  /** The statement that pulls it. */
  readonly place: Place;
  readonly lengthPlace: Place;
  /** What all computing uses: the built length where there is one, else the planned one; 0 or more. */
  readonly length: Metres;
  readonly planned: Metres;
  readonly built?: Sourced<Metres>;
  /** Absent when the name is unknown or the bus has none. */
  readonly cable?: Cable;
  readonly cablePlace?: Place;
  /** Patch cords at the two ends of an Ethernet link, both together; they are not pulled with it. */
  readonly cords?: { readonly length: Metres; readonly cable?: Cable; readonly place: Place };
  readonly tap: boolean;
  /** Pulled for later, connected at neither end: in the pull list, not in the circuit. */
  readonly spare: boolean;
  readonly besideMains?: Place;
  /** In the plus conductor where the run leaves `from`. */
  readonly fuse?: Sourced<Amperes>;
}

/** A stretch of the text that starts with `from`. */
export interface Pen {
  readonly landing: LandingIndex;
  readonly place: Place;
}

/** External fail-safe bias written in the bus (`bias at X R`). */
export interface BusBias {
  readonly landing?: LandingIndex;
  readonly up: Ohms;
  readonly down: Ohms;
  readonly supply: Volts;
  readonly place: Place;
  /** It is the device's own bias, switched on by `bias at X switch` or fixed inside. */
  readonly builtIn: boolean;
}

/** A point where the shield is led to earth: directly, or through a resistor and a capacitor in parallel. */
export interface ShieldEarth {
  readonly landing?: LandingIndex;
  readonly through?: Termination;
  readonly place: Place;
}

/** Data bits, parity and stop bits, as in 8E1. */
export interface CharacterFormat {
  readonly dataBits: 7 | 8;
  readonly parity: 'N' | 'E' | 'O';
  readonly stopBits: 1 | 2;
}

/** One bus of a store: landings are its vertices and runs its edges, in the order of the text. */
export interface Bus {
  readonly index: BusIndex;
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
  /** Its name in the text. */
  readonly place: Place;
  /** The whole block. */
  readonly blockPlace: Place;
  /** Where new statements go: just before the closing brace. */
  readonly endPlace: Place;
  /** Absent when the text names a kind that does not exist; nothing is judged then. */
  readonly kind?: BusKind;
  readonly kindPlace?: Place;
  readonly rate?: Sourced<BitsPerSecond>;
  /** Where a rate is written, even one that could not be understood. */
  readonly ratePlace?: Place;
  readonly format?: Sourced<CharacterFormat>;
  readonly cable?: Cable;
  readonly cablePlace?: Place;
  readonly landings: readonly Landing[];
  readonly runs: readonly Run[];
  readonly pens: readonly Pen[];
  /** The headings under which its text puts its landings, in the order of the text. */
  readonly areas: readonly Place[];
  readonly earths: readonly ShieldEarth[];
  readonly biases: readonly BusBias[];
  /** The document by which its lengths are judged (CAN); unsaid for the usual one. */
  readonly guide?: Sourced<CanGuideName>;
  /** Where in the bit its devices sample, as a share of the bit; unsaid for the usual one of its kind. */
  readonly samplePoint?: Sourced<Ratio>;
  /** Temperature of the cable; 20 degC when unsaid. */
  readonly ambient?: Sourced<Celsius>;
  readonly colours?: {
    readonly plus?: string;
    readonly minus?: string;
    readonly shield?: string;
    readonly common?: string;
    readonly place: Place;
  };
  /** The unit that this bus's text uses most, for messages about it. */
  readonly lengthUnit: LengthUnit;
  /** True when some of its text could not be read, so that absences mean nothing. */
  readonly damaged: boolean;
  /** True when a value (a length, a rate, a terminator, a bias …) was read and not understood: what it says is missing. */
  readonly unclear: boolean;
  /** True when that is a bias. */
  readonly biasUnclear: boolean;
}

/** Whether some of a bus's text was not understood, so that its figures are those of the rest. */
export const isIncomplete = ({ damaged, unclear }: Bus): boolean => damaged || unclear;

/** Units that share one address space on the host network. */
export interface HostNetwork {
  readonly name: string;
  readonly place: Place;
  readonly members: readonly { readonly node?: StoreNode; readonly address?: Sourced<number>; readonly place: Place }[];
}

/** A finding that somebody has decided to live with, and why. */
export interface Waiver {
  readonly rule: string;
  readonly rulePlace: Place;
  readonly reason: string;
  readonly place: Place;
  /** Narrows it to a bus, when it is written inside one or names one. */
  readonly bus?: BusIndex;
  /** Narrows it to a node or splice by its name. */
  readonly at?: string;
}

/** A store with all its parts, from one file or several. */
export interface Store {
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
  readonly place: Place;
  readonly nodes: readonly StoreNode[];
  readonly buses: readonly Bus[];
  readonly networks: readonly HostNetwork[];
  readonly waivers: readonly Waiver[];
  /** What fixes may choose from, whether or not the store uses it: the catalogue that its main file sees, in part. */
  readonly choices: { readonly cables: readonly Cable[]; readonly repeaters: readonly Device[] };
}
