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
 * - A code lens that opens the figures carries the command `ShowFiguresCommand` with `[uri, position]`.
 */

export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Requests from client to server. */
export interface ServerRequests {
  /** The computed figures of the bus at a place; null when there is none. */
  'fieldpair/figures': { params: FiguresParams; result: Figures | null };
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
}

export interface FiguresParams {
  readonly uri: string;
  readonly position: Position;
}

export interface Figures {
  /** One line: `northgate, bus chillers`. */
  readonly title: string;
  /** Plain text for a fixed-width font, lines parted by `\n`. */
  readonly text: string;
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
