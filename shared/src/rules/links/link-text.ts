/** How rules about Ethernet call a link. */
import type { Link } from '../../figures/links.js';
import type { Bus } from '../../network.js';

/** `the link from hub.p1 to panel1`. */
export const linkText = (bus: Bus, { from, to }: Link): string =>
  `the link from ${bus.landings[from]!.name} to ${bus.landings[to]!.name}`;
