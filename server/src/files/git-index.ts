/** The index of a git checkout, as far as it tells which version of each file is staged: gitformat-index(5). */
import { readFileSync, statSync } from 'node:fs';

/** Hashes of contents by path from the top of the checkout; undefined when there is no index that can be read. */
export function stagedHashes(file: string): Map<string, string> | undefined {
  try {
    return statSync(file).isFile() ? readIndex(readFileSync(file)) : undefined;
  } catch {
    // No index, or one that ends in the middle of an entry.
    return undefined;
  }
}

/** Bytes in front of the hash: times, device, inode, mode, owner, size. */
const beforeHash = 40;
const hashLength = 20;
/** The least that follows a hash: flags. */
const flagsLength = 2;

function readIndex(bytes: Buffer): Map<string, string> | undefined {
  const version = bytes.readUInt32BE(4);
  // The fourth version shortens each path by the one before it.
  if (bytes.toString('latin1', 0, 4) !== 'DIRC' || version < 2 || 4 < version) return undefined;
  const hashes = new Map<string, string>();
  const count = bytes.readUInt32BE(8);
  let position = 12;
  let path = Buffer.alloc(0);
  for (let entry = 0; entry < count; entry++) {
    const start = position;
    const hashAt = start + beforeHash;
    const flags = bytes.readUInt16BE(hashAt + hashLength);
    const isExtended = (flags & 0x4000) !== 0;
    let nameAt = hashAt + hashLength + flagsLength + (isExtended ? 2 : 0);
    let kept = 0;
    if (version === 4) {
      const removed = variableLength(bytes, nameAt);
      kept = path.length - removed.value;
      nameAt = removed.end;
    }
    const end = bytes.indexOf(0, nameAt);
    if (end < 0 || kept < 0) return undefined;
    path = Buffer.concat([path.subarray(0, kept), bytes.subarray(nameAt, end)]);
    // Entries of a merge that is not settled have a stage; none of them is the file's version.
    const stage = (flags >> 12) & 3;
    if (stage === 0) hashes.set(path.toString('utf8'), bytes.toString('hex', hashAt, hashAt + hashLength));
    // Entries are padded with 1 to 8 zeros to a multiple of eight bytes, in the fourth version by one zero alone.
    position = version === 4 ? end + 1 : start + (Math.floor((end - start) / 8) + 1) * 8;
  }
  return hashes;
}

/** A number in groups of seven bits, the highest first, each group but the first one more than it says. */
function variableLength(bytes: Buffer, start: number): { readonly value: number; readonly end: number } {
  let position = start;
  let byte = bytes.readUInt8(position++);
  let value = byte & 0x7f;
  while (byte & 0x80) {
    byte = bytes.readUInt8(position++);
    value = (value + 1) * 128 + (byte & 0x7f);
  }
  return { value, end: position };
}
