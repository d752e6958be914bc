/** The card of a landing: who is landed there. It is measured before it is placed, because rows are as high as their cards. */
import type { BusStudy } from '../figures/study.js';
import type { Finding } from '../finding.js';
import type { Landing } from '../network.js';
import { signs, signsWidth } from './marks.js';
import type { Shape } from './scene.js';
import { box, circle, text } from './shapes.js';
import { fitted, textWidth, visible } from './text.js';
import { deviceText, landingTags } from './words.js';

export interface Card {
  readonly height: number;
  /** @param x the middle @param y the top */
  draw(x: number, y: number): Shape[];
}

const padding = 8;
const sizes = { name: 12, small: 10 } as const;
const ring = 18;

interface Line {
  readonly look: string;
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

/**
 * @param letter joins the card with the places where the landing is drawn again
 * @param notes what there is to say of it here beyond its own properties
 */
export function landingCard(
  study: BusStudy,
  landing: Landing,
  findings: readonly Finding[] | undefined,
  letter: string | undefined,
  width: number,
  notes: readonly string[],
): Card {
  const inner = width - 2 * padding;
  const signWidth = signsWidth(findings);
  const beside = signWidth + (letter === undefined ? 0 : ring);
  const gap = beside ? 4 : 0;
  const lines = [
    ...linesOf('name', landing.name, inner - beside - gap, sizes.name, 2, true),
    ...(landing.node?.label === undefined ? [] : linesOf('quiet', landing.node.label, inner, sizes.small, 2)),
    ...linesOf('quiet', deviceText(landing), inner, sizes.small, 2),
  ];
  const tags = [...landingTags(study, landing), ...notes];
  if (tags.length) lines.push(...linesOf('tag', tags.join(' · '), inner, sizes.small, 3));
  const distance = study.shape.distance[landing.index];
  const addresses = [landing.address, ...landing.otherAddresses].flatMap((one) => (one ? [String(one.value)] : []));
  const hasFoot = addresses.length > 0 || distance !== undefined;
  const foot = hasFoot ? 21 : 0;
  const height = padding + lines.reduce((sum, { size }) => sum + lineHeight(size), 0) + foot + 4;
  const look = landing.splice !== undefined ? 'splice' : study.heads.includes(landing) ? 'head' : 'node';
  return {
    height,
    draw: (x, y) => {
      const left = x - width / 2;
      const shapes: Shape[] = [box(`card ${look}`, left, y, width, height, 3)];
      if (look === 'head') shapes.push(box('head-bar', left, y, width, 3));
      shapes.push(...drawLines(lines, left + padding, y + padding));
      const corner = left + width - padding - beside;
      if (letter !== undefined) shapes.push(...ringed(letter, corner + signWidth + ring / 2 + 1, y + padding + 6));
      shapes.push(...signs(findings, corner, y + padding + 6));
      if (hasFoot)
        shapes.push(
          ...footOf(addresses, distance === undefined ? '' : study.lengthText(distance), left, y + height, width),
        );
      return shapes;
    },
  };
}

/** The card of a landing that is drawn elsewhere. */
export function againCard(name: string, letter: string, width: number): Card {
  const lines = [
    ...linesOf('name', name, width - 2 * padding - ring, sizes.name, 2, true),
    ...linesOf('quiet', `drawn at ${letter}`, width - 2 * padding, sizes.small, 1),
  ];
  const height = padding + lines.reduce((sum, { size }) => sum + lineHeight(size), 0) + 5;
  return {
    height,
    draw: (x, y) => [
      box('card again', x - width / 2, y, width, height, 3),
      ...drawLines(lines, x - width / 2 + padding, y + padding),
      ...ringed(letter, x + width / 2 - padding - ring / 2 + 1, y + padding + 6),
    ],
  };
}

/** What stands where a run ends nowhere. */
export function nowhereCard(width: number): Card {
  return {
    height: 18,
    draw: (x, y) => [
      text('tag', x, y + 12, fitted('ends nowhere', width, sizes.small, 1).lines[0] ?? '', {
        size: sizes.small,
        anchor: 'middle',
      }),
    ],
  };
}

/** The card of a unit on a host network. */
export function unitCard(name: string, facts: readonly string[], address: number | undefined, width: number): Card {
  const lines = [
    ...linesOf('name', name, width - 2 * padding, sizes.name, 2, true),
    ...facts.flatMap((fact) => linesOf('quiet', fact, width - 2 * padding, sizes.small, 2)),
  ];
  const addresses = address === undefined ? [] : [String(address)];
  const foot = addresses.length ? 21 : 0;
  const height = padding + lines.reduce((sum, { size }) => sum + lineHeight(size), 0) + foot + 4;
  return {
    height,
    draw: (x, y) => [
      box('card node', x - width / 2, y, width, height, 3),
      ...drawLines(lines, x - width / 2 + padding, y + padding),
      ...footOf(addresses, '', x - width / 2, y + height, width),
    ],
  };
}

const lineHeight = (size: number) => size + 3;

function linesOf(look: string, content: string, width: number, size: number, most: number, bold = false): Line[] {
  return fitted(content, width, size, most, bold).lines.map((line) => ({ look, text: line, size, bold }));
}

function drawLines(lines: readonly Line[], x: number, y: number): Shape[] {
  let base = y;
  return lines.map(({ look, text: content, size, bold }) => {
    base += lineHeight(size);
    return text(look, x, base - 4, content, { size, bold });
  });
}

/** The address on a plate at the left, how far the cable has run at the right. */
function footOf(addresses: readonly string[], distance: string, left: number, bottom: number, width: number): Shape[] {
  const shapes: Shape[] = [];
  let room = width - 2 * padding;
  if (addresses.length) {
    const [plate = ''] = fitted(addresses.join(' / '), room - 10, 11, 1, true).lines;
    const plateWidth = textWidth(plate, 11, true) + 10;
    const middle = left + padding + plateWidth / 2;
    shapes.push(box('plate', left + padding, bottom - 22, plateWidth, 16, 2));
    shapes.push(text('address', middle, bottom - 10, plate, { size: 11, anchor: 'middle', bold: true }));
    room -= plateWidth + 6;
  }
  if (distance === '') return shapes;
  const [far = ''] = fitted(distance, room, sizes.small, 1).lines;
  shapes.push(text('quiet', left + width - padding, bottom - 10.5, far, { size: sizes.small, anchor: 'end' }));
  return shapes;
}

const ringed = (letter: string, x: number, y: number): Shape[] => [
  circle('ring', x, y, 8),
  text('ring-letter', x, y + 3.5, visible(letter), { size: letter.length < 2 ? 10 : 8, anchor: 'middle', bold: true }),
];
