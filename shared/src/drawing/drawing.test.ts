/** Whatever a network is, its drawing shows all of it, once, and legibly. */
import fc from 'fast-check';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.js';
import { illegible } from '../testing/legible.js';
import { type BuiltBus, busOf, headDevice, testCable } from '../testing/network.js';
import { drawStore } from './drawing.js';
import type { Part, Scene } from './scene.js';
import { printColours } from './style.js';
import { sceneSvg } from './svg.js';

const drawn = ({ store, study }: BuiltBus, options = {}, findings: Finding[] = []) =>
  drawStore(store, [study], findings, options);

const keysOf = (scene: Scene, kind: string) => scene.parts.filter((part) => part.kind === kind).map(({ key }) => key);

const hostileNames = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  'Tiefk\u00fchlkostverdampferraumt\u00fcr\u00fcberwachungsanlage',
  '\u202Egnihton',
  'caf\u00e9 \u51b7\u51cd\u5ba4 \u{1F9CA}',
  `${'x'.repeat(500)}`,
  ']]> &amp; \u0000\uD800',
  '\u0628\u0631\u0627\u062f',
];

const name = fc.oneof(
  { weight: 6, arbitrary: fc.nat(14).map((index) => `case${index}`) },
  { weight: 1, arbitrary: fc.constantFrom(...hostileNames) },
  { weight: 1, arbitrary: fc.string({ maxLength: 30 }) },
);
const words = fc.record(
  {
    address: fc.nat(300),
    terminate: fc.constantFrom(120, 150),
    crossed: fc.boolean(),
    shield: fc.constantFrom('through' as const, 'open' as const, 'floating' as const),
    splice: fc.boolean(),
  },
  { requiredKeys: [] },
);
const length = fc.constantFrom(0, 0.3, 3, 12, 30, 400, 1e7);
const step = fc.oneof(
  { weight: 1, arbitrary: fc.record({ step: fc.constant('from' as const), name, words }) },
  { weight: 6, arbitrary: fc.record({ step: fc.constant('to' as const), name, length, words }) },
  { weight: 2, arbitrary: fc.record({ step: fc.constant('tap' as const), name, length, words }) },
  {
    weight: 1,
    arbitrary: fc.record({ step: fc.constant('loose' as const), length, spare: fc.boolean(), tap: fc.boolean() }),
  },
);
const recipe = fc.record({ steps: fc.array(step, { maxLength: 40 }), bias: fc.boolean(), earth: fc.boolean() });

/** A counterexample shows the recipe, which is short. */
function cooked({ steps, bias, earth }: typeof recipe extends fc.Arbitrary<infer Recipe> ? Recipe : never): BuiltBus {
  const bus = busOf('modbus-rtu', { name: 'cases', rate: 19200 }).from('head', { device: headDevice });
  for (const one of steps) {
    if (one.step === 'from') bus.from(one.name, one.words);
    else if (one.step === 'loose') bus.loose(one.length, { spare: one.spare, tap: one.tap });
    else bus[one.step](one.name, one.length, one.words);
  }
  if (bias) bus.bias('head', 560);
  if (earth) bus.earth('head');
  return bus.built();
}
const options = fc.record({ scale: fc.boolean(), width: fc.constantFrom(360, 700, 1120, 2000) });

describe('a drawing', () => {
  it('shows every landing, run and address exactly once, whatever the shape of the bus', () => {
    fc.assert(
      fc.property(recipe, options, (made, chosen) => {
        const built = cooked(made);
        const { bus } = built;
        const scene = drawn(built, chosen);
        expect(keysOf(scene, 'landing')).toHaveLength(bus.landings.length);
        const indices = scene.parts.flatMap(({ landing }) => (landing ? [landing.index] : []));
        expect(indices.toSorted((left, right) => left - right)).toEqual(bus.landings.map(({ index }) => index));
        expect(keysOf(scene, 'run')).toHaveLength(bus.runs.filter(({ spare }) => !spare).length);
        expect(keysOf(scene, 'spare')).toHaveLength(bus.runs.filter(({ spare }) => spare).length);
        const plates = scene.parts.flatMap(({ shapes }) =>
          shapes.flatMap((shape) => (shape.shape === 'text' && shape.look === 'address' ? [shape.text] : [])),
        );
        const addresses = bus.landings.flatMap(({ address }) => (address ? [String(address.value)] : []));
        expect(plates.toSorted()).toEqual(addresses.toSorted());
        expect(new Set(scene.parts.map(({ key }) => key)).size).toBe(scene.parts.length);
      }),
      { numRuns: 150 },
    );
  });

  it('lays no text over another, over the rim of a card or over the edge of the paper', () => {
    fc.assert(
      fc.property(recipe, options, (made, chosen) => {
        expect(illegible(drawn(cooked(made), chosen))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('is well-formed XML whose numbers are numbers, and holds nothing that runs', () => {
    fc.assert(
      fc.property(recipe, options, (made, chosen) => {
        const svg = sceneSvg(drawn(cooked(made), chosen), printColours);
        expect(XMLValidator.validate(svg)).toBe(true);
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        // An outside parser finds the elements that were written and no other.
        const tags = new Set(JSON.stringify(new XMLParser({ preserveOrder: true }).parse(svg)).match(/"[a-z]+":\[/g));
        const known = ['svg', 'title', 'desc', 'style', 'rect', 'g', 'path', 'circle', 'text'].map(
          (tag) => `"${tag}":[`,
        );
        expect([...tags].filter((tag) => !known.includes(tag))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps a bus of 120 landings and a narrow page legible', () => {
    const bus = busOf('bacnet-mstp', { cable: testCable({ name: 'A cable with quite a long name of its own' }) }).from(
      'head',
      {
        device: headDevice,
        terminate: 120,
      },
    );
    for (let index = 1; index < 120; index++)
      bus.to(`coldRoomDoorContact${index}`, 5 + (index % 7), { address: index });
    for (const scale of [false, true]) {
      const scene = drawn(bus.built(), { scale, width: 900 });
      expect(illegible(scene)).toEqual([]);
      expect(keysOf(scene, 'landing')).toHaveLength(120);
    }
  });

  it('stands landings to scale', () => {
    const built = busOf('modbus-rtu').from('head').to('a', 10).to('b', 30).to('c', 5).built();
    const dots = drawn(built, { scale: true }).parts.flatMap(({ shapes }) =>
      shapes.flatMap((shape) => (shape.shape === 'circle' && shape.look === 'dot' ? [shape.x] : [])),
    );
    const [head = 0, a = 0, b = 0, c = 0] = dots;
    expect((b - a) / (a - head)).toBeCloseTo(3, 2);
    expect((c - b) / (a - head)).toBeCloseTo(0.5, 2);
  });

  it('shows a ring by coming back to a landing that it marks', () => {
    const built = busOf('modbus-rtu').from('head').to('a', 10).to('b', 10).to('head', 10).built();
    const scene = drawn(built);
    expect(keysOf(scene, 'again')).toHaveLength(1);
    const letters = scene.parts.flatMap(({ shapes }) =>
      shapes.flatMap((shape) => (shape.shape === 'text' && shape.look === 'ring-letter' ? [shape.text] : [])),
    );
    expect(letters).toEqual(['A', 'A']);
  });

  it('marks each finding at the smallest part that it is about', () => {
    const built = busOf('modbus-rtu').from('head').to('a', 10, { address: 1, terminate: 120 }).built();
    const finding = (place: Finding['place'], severity: Finding['severity']): Finding => {
      return { rule: 'r', severity, message: `${severity} here`, place, related: [], fixes: () => [] };
    };
    const a = built.landing('a');
    const run = built.bus.runs[0]!;
    const scene = drawn(built, {}, [finding(a.visits[0]!.place, 'error'), finding(run.place, 'warning')]);
    const marked = scene.parts.flatMap(({ name: told, findings }) =>
      findings.map(({ message }) => `${told.split(',')[0]}: ${message}`),
    );
    expect(marked).toEqual(['run from head to a: warning here', 'a: error here']);
  });

  it('joins by lines where a landing is drawn again: the arms of a star, the end of a ring', () => {
    const jointsOf = ({ parts }: Scene) => parts.filter(({ kind }) => kind === 'joint');
    const star = busOf('modbus-rtu').from('head', { device: headDevice }).to('a', 10).from('head').to('b', 10);
    star.from('head').to('c', 10);
    const [joint, ...more] = jointsOf(drawn(star.built()));
    expect(more).toEqual([]);
    expect(joint?.name).toMatch(/^joint: all 3 places where head\b/);
    const circles = (scene: Scene, look: string) =>
      scene.parts.flatMap(({ shapes }) =>
        shapes.flatMap((one) => (one.shape === 'circle' && one.look === look ? [one] : [])),
      );
    const ends = (part: Part | undefined) =>
      part!.shapes
        .flatMap((one) => (one.shape === 'path' ? one.d.split('M').slice(1) : []))
        .map((way) => {
          const numbers = [...way.matchAll(/[HV](-?[\d.]+)/g)].map(([, number]) => Number(number));
          return numbers.slice(-2).reverse();
        });
    // Each arm begins at an open circle, and there a line arrives.
    const open = circles(drawn(star.built()), 'ring-dot').map(({ x, y, r }) => [x - r - 0.5, y]);
    expect(open).toHaveLength(2);
    expect(ends(joint)).toEqual(open);
    const ring = busOf('modbus-rtu').from('head', { device: headDevice }).to('a', 10).to('b', 10).to('head', 10);
    expect(jointsOf(drawn(ring.built()))).toHaveLength(1);
    expect(jointsOf(drawn(busOf('modbus-rtu').from('head').to('a', 10).tap('b', 2).built()))).toEqual([]);
  });

  it('tells what is waived from what is open, and counts each for itself', () => {
    const built = busOf('modbus-rtu').from('head').to('a', 10, { address: 1 }).built();
    const { place } = built.landing('a').visits[0]!;
    const finding = (severity: Finding['severity'], reason?: string): Finding => ({
      ...{ rule: 'r', severity, message: 'here', place, related: [], fixes: () => [] },
      ...(reason !== undefined && { waived: { reason, place } }),
    });
    const signsOf = (...findings: Finding[]) =>
      drawn(built, {}, findings)
        .parts.find(({ name: told }) => told.startsWith('a,'))!
        .shapes.flatMap((shape) => (/sign|waived/.test(shape.look) ? [shape.look] : []));
    const open = signsOf(finding('error'));
    expect(signsOf(finding('error'), finding('error', 'agreed'))).toEqual([...open, 'sign waived', 'waived-tick']);
    expect(signsOf(finding('error', 'agreed'))).toEqual(['sign waived', 'waived-tick']);
    const several = signsOf(finding('error', 'agreed'), finding('warning', 'agreed'));
    expect(several).toEqual(['sign waived', 'sign-letter waived-letter']);
  });

  it('draws the same bytes each time', () => {
    const built = () => busOf('modbus-rtu').from('head', { device: headDevice }).to('a', 10).tap('b', 2).built();
    expect(sceneSvg(drawn(built()), printColours)).toBe(sceneSvg(drawn(built()), printColours));
  });
});
