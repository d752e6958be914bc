/** What the rules about supplies share. */
import type { BusStudy } from '../../figures/study.js';
import { isUnknown } from '../../known.js';
import type { Landing, SupplySource } from '../../network.js';
import { type Feed, toleranceOf } from '../../physics/supply.js';
import { type Volts, volts } from '../../quantity.js';

/** The sources of a supply with what they feed; none where the text is damaged. */
export const feedsOf = ({ bus, supply }: BusStudy): readonly Feed[] =>
  bus.damaged || isUnknown(supply) ? [] : supply.feeds;

/** Those that alone feed their part, so that its voltages mean something. */
export function soleFeeds(study: BusStudy): Feed[] {
  const feeds = feedsOf(study);
  const { componentOf } = study.shape;
  const part = ({ landing }: Feed) => componentOf[landing.index]!;
  const count = new Map<number, number>();
  for (const feed of feeds) count.set(part(feed), (count.get(part(feed)) ?? 0) + 1);
  return feeds.filter((feed) => count.get(part(feed)) === 1);
}

/** The most that a source gives with nothing drawn. */
export const highestOf = (source: SupplySource): Volts => volts(source.voltage * (1 + toleranceOf(source)));

/** Where the source of a finding is described. */
export const describedAt = ({ name }: Landing, source: SupplySource) => ({
  message: `${name} is described here`,
  place: source.place,
});
