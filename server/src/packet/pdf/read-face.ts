/** A font that the user names, for letters that the usual one lacks. */
import { readFileSync } from 'node:fs';
import { create, type Font, type FontCollection } from 'fontkit';
import { fileProblem } from '../../files/node-files.js';
import { Face } from './face.js';

const known = new Map<string, Face>();

/** @returns the font, or why there is none, as a clause */
export function readFace(path: string): Face | { readonly problem: string } {
  const face = known.get(path);
  if (face) return face;
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return { problem: fileProblem(error) };
  }
  const font = fontOf(bytes);
  if (!font) return { problem: 'it is no TrueType or OpenType font' };
  if (!mayBeEmbedded(font)) return { problem: 'its licence does not allow it to be embedded' };
  const made = new Face('other', font);
  known.set(path, made);
  return made;
}

/** The first one of a collection. */
function fontOf(bytes: Buffer): Font | undefined {
  try {
    const font: Font | FontCollection = create(bytes);
    const one = 'fonts' in font ? font.fonts[0] : font;
    return one && 0 < one.characterSet.length && 0 < one.layout('').advanceWidth + 1 ? one : undefined;
  } catch {
    return undefined;
  }
}

/** What the font itself says (OpenType, table OS/2, fsType). */
function mayBeEmbedded(font: Font): boolean {
  const { fsType } = (font as unknown as { 'OS/2'?: { fsType?: Readonly<Record<string, boolean>> } })['OS/2'] ?? {};
  return !(fsType?.noEmbedding || fsType?.noSubsetting || fsType?.bitmapOnly);
}
