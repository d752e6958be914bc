/** The drawings of a packet as SVG files of their own. */
import type { Packet } from '@fieldpair/shared/documents';
import { safeName, uniqueNames } from '../files/safe-name.js';
import { sheetName } from './layout.js';
import { svgFile } from './svg.js';

export function packetSvgs({ sheets }: Packet): { readonly name: string; readonly text: string }[] {
  const unique = uniqueNames();
  return sheets.flatMap((sheet) =>
    sheet.blocks.flatMap((block) =>
      block.kind === 'drawing'
        ? { name: `${unique(safeName(sheetName(sheet).toLowerCase(), 'drawing'))}.svg`, text: svgFile(block.wide) }
        : [],
    ),
  );
}
