import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sandbox } from '../../cli/testing/sandbox.js';
import { readFace } from './read-face.js';

const mono = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf');

it('reads a font and knows what it has', () => {
  const face = readFace(mono);
  if ('problem' in face) throw new Error(face.problem);
  expect(face.has('\u2312')).toBe(true);
  expect(face.has('\u51b7')).toBe(false);
  expect(readFace(mono)).toBe(face);
});

it('says why it takes no font from what is none', () => {
  const { folder } = sandbox({ 'text.ttf': 'no font at all', 'empty.ttf': '' });
  const cut = join(folder, 'cut.ttf');
  const box = sandbox();
  box.write('cut.ttf', readFileSync(mono).subarray(0, 2000));
  expect(readFace(join(folder, 'missing.ttf'))).toEqual({ problem: expect.stringMatching(/\S/) });
  for (const path of [join(folder, 'text.ttf'), join(folder, 'empty.ttf'), join(box.folder, 'cut.ttf'), folder, cut]) {
    expect(readFace(path)).toEqual({ problem: expect.stringMatching(/\S/) });
  }
});

it('embeds no font that says that it must not be embedded', () => {
  const bytes = Buffer.from(readFileSync(mono));
  // OpenType: a directory of 16 bytes a table from byte 12 on; fsType is at byte 8 of OS/2.
  const entry = bytes.indexOf('OS/2');
  bytes.writeUInt16BE(0x0002, bytes.readUInt32BE(entry + 8) + 8);
  const box = sandbox();
  expect(readFace(box.write('restricted.ttf', bytes))).toEqual({
    problem: 'its licence does not allow it to be embedded',
  });
});
