/**
 * What the language server and its clients say to each other beyond the Language Server Protocol.
 *
 * Types alone, so that a client takes nothing of the server into its bundle; the names of methods are the keys of
 * `ServerRequests` and `ServerNotifications`. Positions are the protocol's own: lines and UTF-16 units from 0.
 *
 * What the two sides agree on besides:
 * - The server pulls its settings (`Settings`, section `fieldpair`) by `workspace/configuration`, once for the whole
 *   window, and registers `workspace/didChangeConfiguration` for that section to hear of changes.
 * - The client tells of changed `.pair` files by `workspace/didChangeWatchedFiles`; the server registers no watchers.
 * - `fix all` is the code action kind `FixAllKind`, so that editors can also run it on saving.
 * - A code lens that opens the figures carries the command `ShowFiguresCommand` with `[uri, position]`; one that opens
 *   the waveforms `ShowWavesCommand` and one that opens the drawing `DrawStoreCommand` with the same.
 */
import type { Drawing, DrawingParams, LandingMove, MoveLandingParams } from './protocol/drawing.js';
import type { Figures, FiguresParams } from './protocol/figures.js';
import type { PacketPage, PacketParams, SavedPacket, SavePacketParams } from './protocol/packet.js';
import type { Position } from './protocol/places.js';

export type { Drawing, DrawingParams, DrawingPart, LandingMove, MoveLandingParams } from './protocol/drawing.js';
export type { Figures, FiguresParams } from './protocol/figures.js';
export type { PacketFormat, PacketPage, PacketParams, SavedPacket, SavePacketParams } from './protocol/packet.js';
export type { Location, Position, Range } from './protocol/places.js';

/** Requests from client to server. */
export interface ServerRequests {
  /** The computed figures of the bus at a place; null when there is none. */
  'fieldpair/figures': { params: FiguresParams; result: Figures | null };
  /**
   * The waveforms of a bus; null when the file has none. A newer question ends the one before it, which is then
   * answered with the error RequestCancelled, as after `$/cancelRequest`.
   */
  'fieldpair/waves': { params: WavesParams; result: WavesPage | null };
  /** What the bus of such a question allows as it is written, each a sentence; null when the file has none. */
  'fieldpair/wavesAdvice': { params: WavesAdviceParams; result: readonly string[] | null };
  /** The waveforms as a file to be kept. */
  'fieldpair/wavesFile': { params: WavesFileParams; result: WavesFile | null };
  /** The drawing of a file's store; null when it has none. */
  'fieldpair/drawing': { params: DrawingParams; result: Drawing | null };
  /** The edits that move a landing to another place of its bus, or one line that says why there are none. */
  'fieldpair/moveLanding': { params: MoveLandingParams; result: LandingMove };
  /** The installer's packet of the store at a place, to look at; null when there is none. */
  'fieldpair/packet': { params: PacketParams; result: PacketPage | null };
  /** The same as files. */
  'fieldpair/savePacket': { params: SavePacketParams; result: SavedPacket };
  /** Checks every `.pair` file of the workspace, open or not. */
  'fieldpair/checkWorkspace': { params: undefined; result: WorkspaceCheck };
}

/** Notifications from server to client. */
export interface ServerNotifications {
  /** Sent when a check begins and when it has ended. */
  'fieldpair/status': CheckStatus;
}

/** What a client may tell the server at its start. */
export interface InitializationOptions {
  /** The start of the URIs of the rules' pages, with its slash; the id and `.md` follow. */
  readonly rulePages: string;
  /** Whether the client follows links to our commands in hovers. */
  readonly commandLinks?: boolean;
}

/** What is shown of a bus's waveforms. Names and quantities are words, as a user types them. */
export interface WaveChoices {
  /** Both name the bus; the one at `WavesParams.position`, or else the first of the file, when they name none. */
  readonly store?: string;
  readonly bus?: string;
  /** A landing; the head when left out. */
  readonly driver?: string;
  /** Landings to draw; a few telling ones when left out. */
  readonly landings?: readonly string[];
  readonly view: 'pattern' | 'step' | 'eye';
  /** Instead of the bus's: `115200`, `500 kbit/s`. */
  readonly rate?: string;
  /** 10 to 90 % edge of the driver, instead of its port's: `300 ns`. */
  readonly edge?: string;
  /** Zeros and ones that are driven. */
  readonly bits?: string;
  /** What is wrong beside what the text says, as in `WavesPage.faults`. */
  readonly faults?: readonly string[];
  /** Which fix to compare with, as in `WavesPage.fixes`. */
  readonly fix?: string;
  /** Seconds from and to which lines over time are drawn; all that there is when left out. */
  readonly span?: readonly [from: number, to: number];
}

export interface WavesParams {
  readonly uri: string;
  readonly position?: Position;
  readonly choices: WaveChoices;
  /** Pixels that the plot may take. */
  readonly width: number;
  readonly height: number;
}

/** Of the choices those of the bus and the driver count. */
export type WavesAdviceParams = Pick<WavesParams, 'uri' | 'position' | 'choices'>;

export interface WavesFileParams extends WavesParams {
  readonly format: 'svg' | 'csv';
}

export interface WavesFile {
  /** A fitting name with its ending. */
  readonly name: string;
  readonly text: string;
}

export interface WavesPage {
  /** `northgate, bus chillers`. */
  readonly title: string;
  readonly store: string;
  readonly bus: string;
  readonly buses: readonly { readonly store: string; readonly bus: string }[];
  readonly driver: string;
  /** Landings that can drive. */
  readonly drivers: readonly string[];
  readonly landings: readonly WaveLine[];
  /** What is used now: `19,200 bit/s`, `500 ns, assumed`. */
  readonly rate: string;
  readonly edge: string;
  readonly fixes: readonly { readonly id: string; readonly title: string }[];
  readonly faults: readonly { readonly group: string; readonly phrases: readonly string[] }[];
  /** What could not be done as it was chosen, each a sentence; the rest is shown all the same. */
  readonly problems: readonly string[];
  /** Why there is nothing to show, as a sentence. */
  readonly unknown?: string;
  /** The outcome in a sentence or two; `changed` with the fix or the faults. */
  readonly summary?: { readonly written: string; readonly changed?: string };
  readonly notes: readonly string[];
  readonly plot?: WavesPlot;
  readonly table?: WavesTable;
}

/** A landing, and how its line looks. */
export interface WaveLine {
  readonly name: string;
  /** Where it is written. */
  readonly uri: string;
  readonly position: Position;
  readonly shown: boolean;
  /** A class that gives the line its colour. */
  readonly className: string;
  /** As SVG's stroke-dasharray; empty for an unbroken line. */
  readonly dashes: string;
}

export interface WavesPlot {
  readonly svg: string;
  /** Absent where a cursor has nothing to say. */
  readonly cursor?: WavesCursor;
}

export interface WavesCursor {
  /** Pixels of the frame that time runs through, from left to right. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Seconds at the left and at the right, and of one bit. */
  readonly from: number;
  readonly to: number;
  readonly bitTime: number;
  /** Whether this is all that there is to see. */
  readonly whole: boolean;
  /** Evenly from left to right, as text with its unit. */
  readonly times: readonly string[];
  /** Volts at those times; null where a line has none. */
  readonly lines: readonly {
    readonly name: string;
    readonly volts: readonly (number | null)[];
    readonly changed?: readonly (number | null)[];
  }[];
}

export interface WavesTable {
  readonly columns: readonly string[];
  /** What the columns mean. */
  readonly explained: string;
  readonly rows: readonly { readonly cells: readonly string[]; readonly read: 'sure' | 'doubtful' | 'lost' }[];
}

export interface FindingCounts {
  readonly error: number;
  readonly warning: number;
  readonly info: number;
}

/** Totals over all files that the server knows; waived findings are not counted. */
export interface WorkspaceCheck {
  readonly files: number;
  readonly stores: number;
  readonly buses: number;
  readonly findings: FindingCounts;
}

export interface CheckStatus {
  /** True while a check runs; the other fields then tell of the check before it. */
  readonly checking: boolean;
  readonly files: number;
  readonly stores: number;
  readonly findings: FindingCounts;
  /** What the last check took. */
  readonly milliseconds: number;
  /** When the last check ended, in ISO 8601 with its time zone; empty before the first. */
  readonly at: string;
}

export type FixAllKind = 'source.fixAll.fieldpair';

export type ShowFiguresCommand = 'fieldpair.showFigures';

export type ShowWavesCommand = 'fieldpair.showWaves';

/** Takes the anchor of a heading of the language reference, or nothing for its beginning. */
export type OpenReferenceCommand = 'fieldpair.openReference';
export type DrawStoreCommand = 'fieldpair.drawStore';

/** The section `fieldpair` of the settings. */
export interface Settings {
  /** Severity by rule id, over the rule's own. */
  readonly severity: Readonly<Record<string, 'error' | 'warning' | 'info' | 'off'>>;
  /** In which unit lengths are shown; what is written stays as it is. */
  readonly lengthUnit: 'asWritten' | 'ft' | 'm';
  readonly hints: {
    /** After each landing: the distance along the cable from the bus's first `from`. */
    readonly distance: boolean;
    /** Where addresses are left out between neighbours. */
    readonly addressGaps: boolean;
    /** At the landings that are the bus's ends. */
    readonly ends: boolean;
  };
  /** The bus's summary above each bus. */
  readonly codeLens: boolean;
}
