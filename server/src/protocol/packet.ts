/** The installer's packet of a store, to look at and to keep. */
import type { Position } from './places.js';

export interface PacketParams {
  readonly uri: string;
  /** Chooses the store, where a file has several. */
  readonly position: Position;
  readonly paper: 'letter' | 'a4';
  /** Of issue, as YYYY-MM-DD. */
  readonly date: string;
}

export interface PacketPage {
  /** How people call the store. */
  readonly title: string;
  /** A document that loads and runs nothing. */
  readonly html: string;
}

export type PacketFormat = 'html' | 'pdf' | 'csv' | 'xlsx' | 'svg';

export interface SavePacketParams extends PacketParams {
  readonly formats: readonly PacketFormat[];
  /** The URI of a folder on disk; a folder for the store is made in it. */
  readonly folder: string;
  /** The path of a font file with letters that the typeface of PDFs lacks. */
  readonly font?: string;
}

export type SavedPacket =
  | {
      readonly folder: string;
      readonly files: number;
      /** Characters that the PDF cannot show; undefined where it shows all. */
      readonly lacking?: string;
    }
  /** Why there is none, as one line. */
  | { readonly problem: string };
