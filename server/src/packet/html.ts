/**
 * A packet as one HTML file: nothing is fetched and nothing is run, so that it can be mailed, opened on a phone in a
 * plant room and printed. On a narrow screen each row of a table becomes a card.
 */
import { escaped } from '@fieldpair/shared';
import type { Packet, Sheet } from '@fieldpair/shared/documents';
import { shortCaution } from '@fieldpair/shared/documents';
import { blocksHtml } from './html-blocks.js';
import { packetStyle, pageRules } from './html-style.js';

/** Not even the file itself may run or load anything, whatever its text says. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

export function packetHtml(packet: Packet): string {
  const { title, sheets, date, revision } = packet;
  const heading = `${title}: installer\u2019s packet`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="Fieldpair">
<title>${escaped(heading)}</title>
<style>${packetStyle}${pageRules(packet)}</style>
</head>
<body>
<nav aria-label="Sheets"><a href="#${sheets[0]?.id ?? ''}">${escaped(title)}</a> <a href="#contents">Contents</a></nav>
<main>
${sheets.map((sheet, index) => sheetHtml(packet, sheet, index)).join('\n')}
</main>
<footer>${escaped([title, revision === undefined ? undefined : `revision ${revision}`, date].filter(Boolean).join(' \u00b7 '))}</footer>
</body>
</html>
`;
}

function sheetHtml(packet: Packet, sheet: Sheet, index: number): string {
  const { title, date, revision, sheets, remark } = packet;
  const version = revision === undefined ? '' : ` <span>revision <bdi>${escaped(revision)}</bdi></span>`;
  const place = `<span>sheet ${index + 1} of ${sheets.length}</span>`;
  const bus = sheet.bus === undefined ? '' : ` <small>bus <bdi>${escaped(sheet.bus)}</bdi></small>`;
  const marked = remark === undefined ? '' : `<p class="strong">${escaped(remark)}</p>\n`;
  const Heading = index === 0 ? 'h1' : 'h2';
  return `<section id="${sheet.id}" class="sheet s${index + 1}" aria-labelledby="${sheet.id}-title">
<header><p><span><bdi>${escaped(title)}</bdi></span>${version} <span>${escaped(date)}</span> ${place}</p>
<${Heading} id="${sheet.id}-title">${escaped(sheet.title)}${bus}</${Heading}></header>
${marked}${blocksHtml(sheet.blocks, packet, index === 0 ? 'h2' : 'h3')}
<p class="caution-line">${escaped(shortCaution)}</p>
</section>`;
}
