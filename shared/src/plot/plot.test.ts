/** What is drawn, read back by an XML parser that is not ours. */
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { drawWaves } from './plot.js';
import type { Samples } from './trace.js';
import { type Curve, type WavePlot, waveViews } from './wave-plot.js';

const bitTime = 1 / 19_200;
const bits = '0110100111010001';

/** Levels that follow the bits at once, with a spike of 4 V after each rising edge. */
function followed(delay: number, level = 1.5): Samples {
  const time = Float64Array.from({ length: 3200 }, (_, index) => (index / 200) * bitTime);
  const volts = time.map((moment) => {
    const bit = Math.floor((moment - delay) / bitTime);
    if (bits[bit] !== '1') return -level;
    return bits[bit - 1] === '0' && moment - delay - bit * bitTime < bitTime / 100 ? 4 : level;
  });
  return { time, volts };
}

const curves: readonly Curve[] = ['head', 'caseA1', 'caseA2'].map((name, style) => ({
  name,
  style,
  delay: style * 1e-6,
  samples: followed(style * 1e-6),
}));

const plot = (changes: Partial<WavePlot> = {}): WavePlot => ({
  ...{
    view: 'pattern',
    curves,
    bits,
    bitTime,
    samplingAt: { nominal: 0.5, low: 0.4, high: 0.6 },
    thresholds: { low: -0.2, high: 0.2 },
  },
  ...{ title: 'Waveforms', description: 'Three landings.', width: 900, height: 420, prefix: 'p' },
  ...changes,
});

type Node = { readonly [name: string]: unknown };
const parser = new XMLParser({ ignoreAttributes: false, preserveOrder: true, trimValues: false });
const parsed = (svg: string): Node[] => {
  expect(XMLValidator.validate(svg)).toBe(true);
  return parser.parse(svg) as Node[];
};

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}
/** All elements, outer ones first. */
function elements(nodes: readonly Node[]): Element[] {
  return nodes.flatMap((node) => {
    const name = Object.keys(node).find((key) => key !== ':@')!;
    if (name === '#text') return [];
    const children = node[name] as Node[];
    const text = children.map((child) => ('#text' in child ? String(child['#text']) : '')).join('');
    const attributes = (node[':@'] ?? {}) as Record<string, string>;
    return [{ name, attributes, text }, ...elements(children)];
  });
}
const all = (changes: Partial<WavePlot> = {}) => elements(parsed(drawWaves(plot(changes)).svg));
const texts = (changes: Partial<WavePlot> = {}) =>
  all(changes)
    .filter(({ name }) => name === 'text')
    .map(({ text }) => text);
const paths = (found: readonly Element[], className: string) =>
  found.filter(({ name, attributes }) => name === 'path' && attributes['@_class'] === className);

describe.each(waveViews)('the view %s', (view) => {
  it('is well formed and has a name and a description', () => {
    const found = all({ view, heading: 'northgate, bus cases' });
    expect(found[0]).toMatchObject({
      name: 'svg',
      attributes: { '@_role': 'img', '@_aria-labelledby': 'p-title p-description' },
    });
    expect(found.find(({ attributes }) => attributes['@_id'] === 'p-title')?.text).toBe('Waveforms');
    expect(found.find(({ attributes }) => attributes['@_id'] === 'p-description')?.text).toBe('Three landings.');
  });

  it('labels every line, and both axes with their units', () => {
    const found = texts({ view });
    expect(found).toEqual(expect.arrayContaining(['head', 'caseA1', 'caseA2']));
    expect(found.filter((text) => /^time.* \((us|ns|ms)\)$/.test(text))).not.toEqual([]);
    expect(found.filter((text) => text.endsWith('(V)'))).not.toEqual([]);
  });

  it('escapes what names bring along, and writes no character that XML forbids', () => {
    const name = '</text><script>alert(1)</script>"\'&\u0000\u0007\u202e\ud800';
    const svg = drawWaves(
      plot({ view, curves: [{ ...curves[0]!, name }], heading: name, title: name, description: name }),
    ).svg;
    const found = elements(parsed(svg));
    expect(found.filter((one) => one.name === 'script')).toEqual([]);
    // XML 1.0, production 2, and no character that turns the direction of writing.
    expect(svg).not.toMatch(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]|[\u202a-\u202e]/u);
  });

  it('writes only finite numbers, whatever the curves are', () => {
    const strange: Samples[] = [
      { time: [], volts: [] },
      { time: [0], volts: [Number.NaN] },
      { time: [0, 0, 1e-300], volts: [1, Number.POSITIVE_INFINITY, -1e300] },
      { time: [0, 1e9], volts: [0, 0] },
    ];
    for (const samples of strange) {
      for (const shown of [undefined, [0, 0], [Number.NaN, 1]] as const) {
        const { svg } = drawWaves(
          plot({ view, curves: [{ ...curves[0]!, samples, changed: samples }], ...(shown ? { shown } : {}) }),
        );
        parsed(svg);
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
    parsed(drawWaves(plot({ view, curves: [] })).svg);
  });

  it('has ids that begin with its prefix alone', () => {
    const ids = all({ view, prefix: 'other' }).flatMap(({ attributes }) => attributes['@_id'] ?? []);
    expect(ids.filter((id) => !id.startsWith('other-'))).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('lines over time', () => {
  it('keep the spikes, where the axis says they are', () => {
    const { svg, cursor } = drawWaves(plot());
    const [line] = paths(elements(parsed(svg)), 'wave-0');
    const [low, high] = cursor!.volts;
    const { top, bottom } = cursor!.frame;
    const heights = [...line!.attributes['@_d']!.matchAll(/[ML]\S+ (\S+?)(?=[ML]|$)/g)].map(([, y]) => Number(y));
    expect(Math.min(...heights)).toBeCloseTo(bottom - ((4 - low) / (high - low)) * (bottom - top), 0);
  });

  it('mark on each line where its receiver looks', () => {
    const { svg, cursor } = drawWaves(plot());
    const dots = elements(parsed(svg)).filter(
      ({ name, attributes }) => name === 'circle' && attributes['@_class'] === 'wave-1 wave-dot',
    );
    expect(dots).toHaveLength(bits.length);
    const { frame, time } = cursor!;
    const secondDot = (1e-6 + 1.5 * bitTime - time[0]) / (time[1] - time[0]);
    expect(Number(dots[1]!.attributes['@_cx'])).toBeCloseTo(frame.left + secondDot * (frame.right - frame.left), 1);
  });

  it('show a part of the time when asked, and nothing of the rest', () => {
    const found = all({ shown: [2 * bitTime, 4 * bitTime] });
    const dots = found.filter(
      ({ name, attributes }) => name === 'circle' && attributes['@_class'] === 'wave-0 wave-dot',
    );
    expect(dots).toHaveLength(2);
    const bitNames = found.filter(({ attributes }) => attributes['@_class'] === 'wave-bit').map(({ text }) => text);
    expect(bitNames).toEqual([bits[2], bits[3]]);
  });

  it('lay what a change makes behind what is written, broad and pale', () => {
    const found = all({
      curves: [{ ...curves[0]!, changed: followed(0, 2) }],
      names: { curve: 'as written', changed: 'as it should be' },
    });
    const widths = paths(found, 'wave-0').map(({ attributes }) => attributes['@_stroke-width']);
    expect(widths.slice(0, 2)).toEqual(['6', '1.8']);
    expect(texts({ names: { curve: 'as written', changed: 'as it should be' } }).join()).toContain(
      'thin: as written; broad and pale: as it should be',
    );
  });

  it('keep labels apart and inside, however many lines end together', () => {
    const many = Array.from({ length: 60 }, (_, style) => ({ ...curves[0]!, name: `case${style}`, style }));
    const labels = all({ curves: many }).filter(({ name, text }) => name === 'text' && /^case|^and/.test(text));
    const heights = labels.map(({ attributes }) => Number(attributes['@_y']));
    expect(labels.at(-1)!.text).toBe(`and ${60 - labels.length + 1} more`);
    for (const [index, height] of heights.entries()) {
      if (0 < index) expect(height - heights[index - 1]!).toBeGreaterThanOrEqual(14.9);
      expect(height).toBeLessThanOrEqual(420);
    }
  });
});

describe('the eye', () => {
  it('draws bits that look the same once', () => {
    const sent = '01'.repeat(200);
    const time = Float64Array.from({ length: 100 * sent.length }, (_, index) => (index * bitTime) / 100);
    const volts = Float64Array.from(time, (_, index) => (sent[Math.floor(index / 100)] === '1' ? 2 : -2));
    const found = all({ view: 'eye', bits: sent, curves: [{ ...curves[0]!, samples: { time, volts } }] });
    const drawn = paths(found, 'wave-0')[0]!.attributes['@_d']!.match(/M/g)!.length;
    // Two bits differ; a few more may by the rounding of sampling times.
    expect(drawn).toBeGreaterThanOrEqual(2);
    expect(drawn).toBeLessThanOrEqual(12);
  });
});
