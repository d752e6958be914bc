/** The drawings of a packet as SVG files of their own. */
import { type Packet, standingAlone } from '@fieldpair/shared/documents';
import { safeName, uniqueNames } from '../files/safe-name.js';
import { sheetName } from './layout.js';
import { svgFile } from './svg.js';

export function packetSvgs(packet: Packet): { readonly name: string; readonly text: string }[] {
  const unique = uniqueNames();
  return packet.sheets.flatMap((sheet) =>
    sheet.blocks.flatMap((block) => {
      if (block.kind !== 'drawing') return [];
      const name = unique(safeName(sheetName(sheet).toLowerCase(), 'drawing'));
      return { name: `${name}.svg`, text: svgFile(standingAlone(block.wide, packet, sheet)) };
    }),
  );
}
