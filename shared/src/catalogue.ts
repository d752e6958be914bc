/**
 * The catalogue: places in text, kinds of bus, cables and devices. The first half of what a network is made of; see
 * network.ts.
 */
import type {
  Amperes,
  BitsPerSecond,
  Farads,
  FaradsPerMetre,
  Ohms,
  OhmsPerMetre,
  Ratio,
  Seconds,
  SquareMetres,
  Volts,
} from './quantity.js';
import type { ContactRest, LoopInput, SupplyLoad, SupplySource } from './two-wire.js';

export * from './two-wire.js';

/** A stretch of a text: offsets in UTF-16 units, the end excluded. `file` is the identity that the host gave. */
export interface Place {
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

/** A value with the place where it was written. */
export interface Sourced<T> {
  readonly value: T;
  readonly place: Place;
}

/** The kinds of bus that the language knows. */
export const busKinds = [
  'rs485',
  'modbus-rtu',
  'bacnet-mstp',
  'peer-485',
  'free-topology',
  'can',
  'ethernet',
  'contact-loop',
  'supply',
] as const;
export type BusKind = (typeof busKinds)[number];

/** The kinds whose wires are an RS-485 pair; a port of kind `rs485` can serve each that it speaks. */
export const rs485Kinds: ReadonlySet<BusKind> = new Set<BusKind>(['rs485', 'modbus-rtu', 'bacnet-mstp', 'peer-485']);

// --- The catalogue ---------------------------------------------------------------------------------------------

/**
 * Classes of cable that documents give limits for: the categories of ANSI/TIA-568, level IV of NEMA and TIA, and the
 * 0.8 mm installation cable J-Y(St)Y of DIN VDE 0815.
 */
export const cableClasses = ['category-5', 'category-5e', 'category-6', 'category-6a', 'level-4', 'jysty-08'] as const;
export type CableClass = (typeof cableClasses)[number];

/** Documents whose advice on lengths by rate a CAN bus may follow: CiA's table, or ISO 11898 with a transceiver maker's rule. */
export const canGuideNames = ['cia', 'iso'] as const;
export type CanGuideName = (typeof canGuideNames)[number];

/** A kind of cable. Electrical values are per metre of cable and, for resistance, of one conductor at 20 degC. */
export interface Cable {
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
  readonly place: Place;
  /** Wire gauge number, 0000 as -3; from `conductor 22 AWG`. */
  readonly gauge?: number;
  /** Cross-section of one conductor, when it was given as an area. */
  readonly area?: SquareMetres;
  readonly stranding?: 'solid' | 'stranded';
  readonly tinned?: boolean;
  /** What its conductors are insulated with, where a limit depends on it. */
  readonly insulation?: 'fluoropolymer' | 'pvc';
  /** The class that its maker states. */
  readonly class?: CableClass;
  /** Number of twisted pairs; 0 for a cable that says `untwisted`. */
  readonly pairs?: number;
  readonly shield?: 'foil' | 'braid' | 'foil braid' | 'none';
  readonly drain?: boolean;
  readonly impedance?: Ohms;
  readonly capacitance?: FaradsPerMetre;
  /** Speed of the wave as a share of the speed of light. */
  readonly velocity?: Ratio;
  /** As the maker states it; derived from the conductor when absent (see physics/conductor). */
  readonly resistance?: OhmsPerMetre;
  /** What one conductor may carry, as the maker states it. */
  readonly carries?: Amperes;
  /** Colours of the conductors, in the maker's order. */
  readonly colours: readonly string[];
}

/** A resistor across the pair, with a capacitor in series where `capacitance` is given. */
export interface Termination {
  readonly resistance: Ohms;
  readonly capacitance?: Farads;
}

/** How a device's address is set, and what can be set. */
export interface AddressSetting {
  readonly means: 'dial' | 'switches' | 'software';
  readonly low: number;
  readonly high: number;
  /** How many dials or switches the device has for it; as many as `high` needs when unsaid. */
  readonly positions?: number;
  /** Whether the first dial or switch counts least or most; absent when the catalogue does not say. */
  readonly first?: 'least' | 'most';
  /** Where a switch stands that is on; absent when the catalogue does not say. */
  readonly on?: 'up' | 'down';
  /** A switch that is on counts nothing, and one that is off counts. */
  readonly onIsZero?: boolean;
  /** The digits of a dial run from 0 to F. */
  readonly hexadecimal?: boolean;
}

/** Fail-safe bias inside a device: one resistor from plus up to the supply and one from minus down to common. */
export interface PortBias {
  readonly mode: 'switch' | 'fixed';
  readonly up: Ohms;
  readonly down: Ohms;
  readonly supply: Volts;
}

/** A connector of a device on which a bus can land. */
export interface Port {
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
  readonly place: Place;
  /** The electrical kind, or undefined when the text names none that exists. */
  readonly kind?: BusKind;
  /** Protocols that an `rs485` port can be used with; empty when the catalogue does not say. */
  readonly speaks: readonly BusKind[];
  readonly terminals: {
    readonly plus?: string;
    readonly minus?: string;
    readonly shield?: string;
    readonly common?: string;
  };
  readonly polarity?: 'required' | 'free';
  /** Share of one unit load (TIA-485-A: about 12 kohm from each line to common). */
  readonly unitLoad?: number;
  /** What the port resists between the two wires, where it is specified so (CAN). */
  readonly resistance?: Ohms;
  /** Capacitance that the port hangs across the pair. */
  readonly capacitance?: Farads;
  readonly terminator?: { readonly mode: 'switch' | 'fixed' } & Termination;
  readonly bias?: PortBias;
  /** The receiver needs a biased line to read an idle bus as idle. */
  readonly needsBias: boolean;
  readonly address?: AddressSetting;
  /** Rates that can be set; empty when the catalogue does not say. */
  readonly rates: readonly BitsPerSecond[];
  /** Rise time of its driver, 10 to 90 %. */
  readonly edge?: Seconds;
  /** What a bit takes from the controller to the pair and back to it, isolators included (CAN). */
  readonly delay?: Seconds;
  /** There, but not enabled: on these revisions (empty: on all). */
  readonly reserved?: { readonly revisions: readonly string[]; readonly reason?: string; readonly place: Place };
  /** An identical connector beside the port that is meant for buses. */
  readonly twinOf?: { readonly port: string; readonly reason?: string; readonly place: Place };
  /** It feeds a supply. */
  readonly supplies?: SupplySource;
  /** It is fed by a supply. */
  readonly draws?: SupplyLoad;
  /** It is a contact of a loop. */
  readonly contact?: ContactRest;
  /** It is the input that a loop is read by. */
  readonly input?: LoopInput;
}

/** What a device does on a bus. */
export type DeviceRole = 'head' | 'node' | 'repeater';

/** A kind of hardware. */
export interface Device {
  readonly name: string;
  readonly label?: string;
  readonly documentation?: string;
  readonly place: Place;
  readonly role: DeviceRole;
  readonly revisions: readonly string[];
  /** Where each revision is declared, in the same order. */
  readonly revisionPlaces: readonly Place[];
  readonly ports: readonly Port[];
  readonly indicators: readonly { readonly name: string; readonly text: string }[];
  readonly marks: readonly string[];
}
