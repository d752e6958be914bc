/** A signal that was told of a bus, for the bus as it has become since. */
import { type Bus, type BusMargin, isUnknown, type Known, type LandingIndex, type Signal } from '@fieldpair/shared';

export interface ToldSignal {
  readonly signal: Known<Signal>;
  /** Of the landings that the signal counts. */
  readonly names: readonly string[];
}

/** The same signal with the landings as the bus counts them now; undefined where one of them is gone. */
export function told(last: ToldSignal | undefined, { landings }: Bus): Known<Signal> | undefined {
  if (!last || isUnknown(last.signal)) return last?.signal;
  const { asWritten, righted, withoutTaps, alone, slower, shorter } = last.signal;
  const places = new Map(landings.map(({ name, index }) => [name, index]));
  const now = (landing: LandingIndex) => places.get(last.names[landing] ?? '');
  const moved = ({ margin, landing, driver }: BusMargin): BusMargin | undefined => {
    const [at, from] = [now(landing), now(driver)];
    return at === undefined || from === undefined ? undefined : { margin, landing: at, driver: from };
  };
  const [written, right, tapless] = [moved(asWritten), moved(righted), moved(withoutTaps)];
  const slow = slower && moved(slower.margin);
  if (!written || !right || !tapless || (slower && !slow)) return undefined;
  const each = new Map<LandingIndex, BusMargin>();
  for (const [landing, margin] of alone) {
    const [at, there] = [now(landing), moved(margin)];
    if (at !== undefined && there) each.set(at, there);
  }
  return {
    asWritten: written,
    righted: right,
    withoutTaps: tapless,
    alone: each,
    ...(slower && slow && { slower: { rate: slower.rate, margin: slow } }),
    ...(shorter !== undefined && { shorter }),
  };
}
