/** How the HTML file looks: on a wide screen, on a phone, on paper. */
import { type Packet, type Sheet, shortCaution } from '@fieldpair/shared/documents';
import { sheetName } from './layout.js';
import { pictureStyle } from './svg.js';

export const packetStyle = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; scroll-padding-top: 3.5rem; }
body { margin: 0; background: #eceff0; color: #000; font: 16px/1.4 system-ui, "Segoe UI", Roboto, "Noto Sans", Arial, sans-serif; overflow-wrap: anywhere; }
nav { position: sticky; top: 0; z-index: 1; display: flex; gap: 1rem; justify-content: space-between; padding: .6rem 1rem; background: #16323a; }
nav a { color: #fff; max-width: 75%; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
main { max-width: 72rem; margin: 0 auto; padding: 1rem; }
.sheet { background: #fff; border: 1px solid #9aa5a9; padding: 1rem 1.25rem; margin: 0 0 1.25rem; }
.sheet > header p { display: flex; flex-wrap: wrap; gap: 0 1rem; justify-content: space-between; margin: 0; color: #333; border-bottom: 1px solid #000; padding-bottom: .3rem; }
.sheet > header span { min-width: 0; }
h1, h2 { line-height: 1.2; margin: .6rem 0 .8rem; }
h1 { font-size: 1.7rem; } h2 { font-size: 1.45rem; } .part { font-size: 1.1rem; margin: 1.2rem 0 .4rem; }
h1 small, h2 small { display: block; font-size: 1.05rem; font-weight: normal; }
p { margin: .5rem 0; } .strong { font-weight: 700; }
p.strong { border-left: .4rem solid #000; padding-left: .7rem; font-size: 1.1rem; }
.note { color: #222; }
.caution-line { border-top: 1px solid #000; margin-top: 1.2rem; padding-top: .3rem; font-weight: 600; }
.cautions { border: 3px solid #000; padding: .1rem 1rem .4rem; margin: 1rem 0; }
.cautions .head { font-weight: 700; margin: .5rem 0; text-transform: uppercase; letter-spacing: .06em; }
ul, ol { padding-left: 1.4rem; margin: .4rem 0; } li { margin: .25rem 0; }
.steps { list-style: none; counter-reset: step; padding-left: 0; }
.steps li { counter-increment: step; position: relative; padding: .15rem 0 .15rem 4rem; }
.steps li::before { content: counter(step); position: absolute; left: 1.9rem; font-weight: 700; }
.steps li::after { content: ""; position: absolute; left: .15rem; top: .3rem; width: 1.05rem; height: 1.05rem; border: 1.5px solid #000; }
dl { margin: .6rem 0; } dl div { display: grid; grid-template-columns: minmax(7rem, 30%) 1fr; gap: .8rem; padding: .15rem 0; }
dt { color: #333; } dd { margin: 0; font-weight: 600; min-width: 0; }
.signatures { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); gap: 0 1.5rem; } .signatures div { align-items: end; } .signatures dd { border-bottom: 1px solid #000; min-height: 1.9rem; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; margin: .8rem 0; }
caption { text-align: left; font-weight: 700; font-size: 1.1rem; padding: .4rem 0; }
th, td { border: 1px solid #555; padding: .3rem .4rem; text-align: left; vertical-align: top; hyphens: auto; }
th { background: #e4e8e9; font-size: .9rem; }
tbody { border-top: 2px solid #000; border-bottom: 2px solid #000; }
td.number { font-variant-numeric: tabular-nums; }
.box { display: inline-block; width: 1.05rem; height: 1.05rem; border: 1.5px solid #000; vertical-align: middle; }
.total td { font-weight: 700; }
svg { max-width: 100%; height: auto; } .drawing svg { display: block; width: 100%; max-width: 760px; } .narrow { display: none; }
${pictureStyle}
a { color: #0b4a5c; }
footer { max-width: 72rem; margin: 0 auto; padding: 0 1rem 2rem; color: #222; }
@media screen and (max-width: 760px) {
  .wide { display: none; } .narrow { display: block; }
  main { padding: .5rem; } .sheet { padding: .7rem .8rem; }
  table, caption, tbody, tr, td { display: block; width: 100%; }
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  colgroup { display: none; }
  tbody { border: 2px solid #000; margin-bottom: .8rem; }
  tr + tr { border-top: 1px solid #777; }
  td { border: 0; display: grid; grid-template-columns: 8.5rem minmax(0, 1fr); gap: 0 .6rem; }
  td::before { content: attr(data-head); grid-row: 1 / span 20; color: #333; }
  td > * { grid-column: 2; } td > br { display: none; }
  td.none, td:empty { display: none; }
  .line { border-bottom: 1px solid #000; height: 1.2rem; }
}
@media print {
  body { background: none; font-size: 10.5pt; line-height: 1.3; }
  nav, footer, .caution-line { display: none; }
  .signatures { grid-template-columns: 1fr 1fr; } .signatures, .note { break-inside: avoid; }
  main { max-width: none; padding: 0; }
  .sheet { border: 0; padding: 0; margin: 0; break-before: page; }
  .sheet:first-child { break-before: auto; }
  thead { display: table-header-group; } tbody, .cautions, .steps li, svg { break-inside: avoid; }
  h2, .part, caption { break-after: avoid; }
  th, td { padding: 2pt 3pt; } th { font-size: 10pt; }
}
`;

/** Paper, and what stands in the margins of each sheet's pages: store, bus, revision, date, page. */
export function pageRules(packet: Packet): string {
  const size = packet.paper === 'a4' ? 'A4' : 'letter';
  const version = packet.revision === undefined ? '' : `, revision ${packet.revision}`;
  const foot = cssText(`${shortened(packet.title)}${version}, ${packet.date}`);
  const ofSheet = (sheet: Sheet, index: number) => `
@page p${index + 1} { size: ${size} ${sheet.landscape ? 'landscape' : 'portrait'}; @bottom-left { content: ${foot}; } @bottom-center { content: ${cssText(shortened(sheetName(sheet)))}; } }
.s${index + 1} { page: p${index + 1}; }`;
  return `
@page { size: ${size}; margin: 14mm 12mm 16mm; font: 10pt Arial, sans-serif; @top-center { content: ${cssText(shortCaution)}; text-align: left; font-weight: bold; } @bottom-right { content: "page " counter(page) " of " counter(pages); } }${packet.sheets.map(ofSheet).join('')}
`;
}

/** The middle of a long name is what people miss least. */
const shortened = (text: string) => (text.length <= 60 ? text : `${text.slice(0, 40)}\u2026${text.slice(-15)}`);

/** A text between quotes of CSS inside a style element: all but plain characters as their code points. */
const cssText = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:()+-]/gu, (character) => `\\${character.codePointAt(0)!.toString(16)} `)}"`;
