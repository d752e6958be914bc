/** The looks of drawings for a PDF, read from the same style sheet that SVG uses, so that there is one of them. */
import { drawingStyle, printColours } from '@fieldpair/shared';

/** What the style sheet can say of a shape. */
export interface Look {
  readonly stroke?: string;
  readonly width: number;
  readonly fill?: string;
  /** Lengths of the dash and of the gap. */
  readonly dash?: readonly [number, number];
  readonly cap: 'round' | 'butt';
}

interface Rule {
  readonly tag: string;
  readonly classes: readonly string[];
  readonly declarations: ReadonlyMap<string, string>;
}

/** Rules of the form `tag,.a.b{name:value;…}`: all that the style sheet of drawings is made of. */
const rules: readonly Rule[] = [...drawingStyle(printColours).matchAll(/([^{}\n]+)\{([^{}]*)\}/g)].flatMap(
  ([, selectors = '', body = '']) => {
    const declarations = new Map(
      body.split(';').map((one): [string, string] => {
        const colon = one.indexOf(':');
        return [one.slice(0, colon), one.slice(colon + 1)];
      }),
    );
    return selectors.split(',').map((selector) => {
      const [tag = '', ...classes] = selector.trim().split('.');
      return { tag, classes, declarations };
    });
  },
);

const known = new Map<string, Look>();

/** @param tag of the element that SVG has for the shape */
export function lookOf(tag: 'path' | 'rect' | 'circle' | 'text', names: string): Look {
  const key = `${tag} ${names}`;
  let look = known.get(key);
  if (!look) {
    look = computedLook(tag, names.split(' '));
    known.set(key, look);
  }
  return look;
}

function computedLook(tag: string, names: readonly string[]): Look {
  const values = new Map<string, string>();
  for (const rule of rules) {
    if ((rule.tag === '' || rule.tag === tag) && rule.classes.every((one) => names.includes(one))) {
      for (const [name, value] of rule.declarations) values.set(name, value);
    }
  }
  const paint = (name: string) => (values.get(name) === 'none' ? undefined : values.get(name));
  const stroke = paint('stroke');
  const fill = paint('fill');
  const [dash, gap] = (paint('stroke-dasharray') ?? '').split(' ').map(Number);
  return {
    width: Number(values.get('stroke-width') ?? 1),
    cap: values.get('stroke-linecap') === 'round' ? 'round' : 'butt',
    ...(stroke !== undefined && { stroke }),
    ...(fill !== undefined && { fill }),
    ...(dash && gap && { dash: [dash, gap] as const }),
  };
}
