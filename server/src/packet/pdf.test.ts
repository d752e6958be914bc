import { createRequire } from 'node:module';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { packetPdf, readFace } from './pdf.js';
import { hostileStore, packetOf, plainStore } from './testing/stores.js';

async function read(bytes: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: { text: string; width: number; height: number; sizes: number[] }[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const runs = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? item : []));
    const [, , width = 0, height = 0] = page.view;
    pages.push({
      text: runs.map(({ str }) => str).join('\n'),
      width,
      height,
      sizes: runs.map(({ transform }) => Math.abs(transform[3])),
    });
  }
  return { document, pages, all: pages.map(({ text }) => text).join('\n') };
}

describe('a packet as a PDF', () => {
  it('has real text: every landing, colour, reading and caution can be found', async () => {
    const { all } = await read((await packetPdf(packetOf(plainStore))).bytes);
    for (const text of [
      'Northgate Market',
      'Landing schedule',
      'caseA',
      'caseB',
      'white',
      'blue',
      'D+ (plus)',
      '38 ft',
      '12 ft 6 in',
    ]) {
      expect(all).toContain(text);
    }
  });

  it('says on every page which one of how many it is, the store, the date, and the caution', async () => {
    const { pages } = await read((await packetPdf(packetOf(plainStore, { revision: '3f2a91bc04' }))).bytes);
    expect(pages.length).toBeGreaterThan(3);
    for (const [index, { text }] of pages.entries()) {
      expect(text).toContain(`page ${index + 1} of ${pages.length}`);
      expect(text).toContain('Northgate Market');
      expect(text).toContain('revision 3f2a91bc04, 2026-03-14');
      expect(text).toMatch(/^(?:Whole store|Bus: Cases)\. /m);
      expect(text).toMatch(/De-energise, lock out, prove dead/);
    }
  });

  it('puts sheets of one bus on one page where they fit, and never those of two', async () => {
    const packet = packetOf(
      plainStore
        .replace(/(\n {2}bus cases )("Cases")([\s\S]*?\n {2}}\n)/, '$1$2$3$1$2$3')
        .replace('bus cases "Cases"', 'bus dairy "Dairy"'),
    );
    const { pages } = await read((await packetPdf(packet)).bytes);
    const heads = pages.map(({ text }) => /^(?:Whole store|Bus: \w+)\. .*$/m.exec(text)?.[0]);
    expect(heads).toContain('Bus: Cases. One-line diagram, Pull and cut list');
    const sheets = packet.sheets.map(({ title, bus }) => `${bus ?? 'Whole store'}. ${title}`);
    const shown = heads.flatMap((head = '') => {
      const [bus, titles = ''] = head.replace('Bus: ', '').split('. ');
      return titles.split(', ').map((title) => `${bus}. ${title}`);
    });
    expect(shown.filter((one, index) => one !== shown[index - 1])).toEqual(sheets);
    for (const [index, { text }] of pages.entries()) {
      const other = heads[index]?.startsWith('Bus: Cases') ? 'of Dairy' : 'of Cases';
      if (heads[index]?.startsWith('Bus')) expect(text).not.toContain(other);
    }
  });

  it('has no text below 10 points', async () => {
    const { pages } = await read((await packetPdf(packetOf(plainStore))).bytes);
    for (const { sizes } of pages) expect(Math.min(...sizes)).toBeGreaterThanOrEqual(9.99);
  });

  it.each([
    ['letter', 612, 792],
    ['a4', 595.28, 841.89],
  ] as const)('is on %s, across where a sheet is wide', async (paper, width, height) => {
    const { pages } = await read((await packetPdf(packetOf(plainStore, { paper, unit: 'both' }))).bytes);
    const sizes = new Set(pages.map((page) => `${page.width} ${page.height}`));
    expect(sizes).toEqual(new Set([`${width} ${height}`, `${height} ${width}`]));
  });

  it('has an outline by bus whose entries lead to pages, and a contents with the right ones', async () => {
    const { document, pages } = await read((await packetPdf(packetOf(plainStore))).bytes);
    const outline = await document.getOutline();
    expect(outline.map(({ title }) => title)).toEqual(['Installer\u2019s packet', 'Cases', 'Parts list']);
    expect(outline[1]!.items.map(({ title }) => title)).toEqual([
      'One-line diagram',
      'Pull and cut list',
      'Landing schedule',
      'Address table',
      'Commissioning',
    ]);
    const first = pages.findIndex(({ text }, index) => 0 < index && text.includes('Parts list'));
    const lines = pages[0]!.text.split('\n');
    const numbers = lines.filter((line) => /^\d+$/.test(line));
    expect(numbers).toContain(String(first + 1));
  });

  it('takes hostile names as text, whatever their script and length', async () => {
    const bytes = (await packetPdf(packetOf(hostileStore))).bytes;
    const raw = Buffer.from(bytes).toString('latin1');
    expect(raw).not.toMatch(/\/(?:JavaScript|JS|Launch|URI|EmbeddedFile|OpenAction)\b/);
    const { all, document } = await read(bytes);
    expect(all).toContain('<script>alert(1)</script>'.slice(0, 8));
    expect(all).toContain('stands for a character that the typeface lacks; page 1 says which');
    expect(await document.getJSActions()).toBeNull();
  });

  it('says which characters its typeface lacks and where, and shows them with a font that has them', async () => {
    const packet = packetOf(plainStore.replace('"Cases"', '"\u51b7\u51cd \u2312"'));
    const { pages, document } = await read((await packetPdf(packet)).bytes);
    const first = pages[0]!.text.replaceAll('\n', ' ');
    expect(first).toContain('lacks 3 characters and has \u25af for each: U+2312, U+51B7 (Han), U+51CD (Han).');
    expect(first).toMatch(/Sheets: Installer\u2019s packet; One-line diagram, .*; Parts list\./);
    expect((await document.getOutline()).map(({ title }) => title)).toContain('\u51b7\u51cd \u2312');
    const boxed = pages.slice(1).filter(({ text }) => /^Bus: /m.test(text));
    expect(boxed.some(({ text }) => text.includes('page 1 says which'))).toBe(true);

    const mono = readFace(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf'));
    if ('problem' in mono) throw new Error(mono.problem);
    const other = await packetPdf(packet, mono);
    expect(other.lacking).toBe('\u51b7\u51cd');
    expect((await read(other.bytes)).all).toContain('\u2312');
    expect((await packetPdf(packetOf(plainStore))).lacking).toBe('');
  });

  it('is the same bytes for the same packet', async () => {
    const [one, other] = [(await packetPdf(packetOf(plainStore))).bytes, (await packetPdf(packetOf(plainStore))).bytes];
    expect(Buffer.compare(one, other)).toBe(0);
  });
});
