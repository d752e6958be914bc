/** A host network: the units that share one address space, side by side on one line. It has no lengths of its own. */
import type { Finding } from '../finding.js';
import type { HostNetwork, Store } from '../network.js';
import { type Drawn, margin } from './bus-drawing.js';
import { unitCard } from './card.js';
import { signs } from './marks.js';
import type { Part, Shape } from './scene.js';
import { circle, line, path, text } from './shapes.js';
import { fitted, textWidth } from './text.js';

const pitch = 150;

export function drawNetwork(
  store: Store,
  network: HostNetwork,
  findings: readonly Finding[],
  top: number,
  width: number,
  keyOf: (wanted: string) => string,
): Drawn {
  const left = margin + 22;
  const [name = ''] = fitted(network.name, width / 2, 15, 1, true).lines;
  const beside = left + textWidth(name, 15, true) + 12;
  const shapes: Shape[] = [
    line('rule', margin, top, width - margin, top),
    text('title', left, top + 24, name, { size: 15, bold: true }),
    ...signs(findings, beside, top + 19),
    text('quiet', left, top + 42, 'host network: these units share one range of addresses', { size: 11 }),
  ];
  const names: string[] = [];
  const most = Math.max(1, Math.floor((width - 2 * left) / pitch));
  let y = top + 64;
  for (let first = 0; first < network.members.length; first += most) {
    const members = network.members.slice(first, first + most);
    const cards = members.map(({ node, address }) => {
      const lands = store.buses.filter(({ landings }) => node && landings.some((landing) => landing.node === node));
      const facts = node?.device ? [node.device.name] : [];
      if (lands.length) facts.push(`on ${lands.map((bus) => bus.name).join(', ')}`);
      names.push(`${node?.name ?? 'unknown'}${address ? ` at ${address.value}` : ''}`);
      return unitCard(node?.name ?? 'unknown', facts, address?.value, pitch - 12);
    });
    const last = left + (members.length - 0.5) * pitch;
    shapes.push(path('thin', `M${left} ${y - 2}H${last}M${left} ${y + 2}H${last}`));
    for (const [index, card] of cards.entries()) {
      const x = left + (index + 0.5) * pitch;
      shapes.push(line('lead', x, y + 2, x, y + 20), circle('dot', x, y, 4), ...card.draw(x, y + 20));
    }
    y += 20 + Math.max(...cards.map(({ height }) => height)) + 20;
  }
  const key = keyOf(`network ${network.name}`);
  const part: Part = {
    key,
    kind: 'network',
    name: `host network ${network.name}: ${names.join(', ')}`,
    findings,
    group: key,
    place: network.place,
    covers: [network.place, ...network.members.map(({ place }) => place)],
    shapes,
  };
  return { parts: [part], bottom: y - 20 };
}
