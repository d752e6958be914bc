/** Fixes that pull a bus, or a part of it, on another cable of the catalogue. */
import type { BusStudy } from '../../figures/study.js';
import type { Fix, NetworkEdit } from '../../finding.js';
import type { Bus, Cable, Run } from '../../network.js';
import { isShielded, mainCable, recable } from './cables.js';
import { cableDifferences } from './mixed-cable.js';

/** More cables than this say no more. */
const mostChoices = 3;

/**
 * The whole bus goes on another cable where all of it runs on this one, and what the text says of shield and colours
 * follows; else these runs go on the main cable, or on one that is like it.
 */
export function pullFixes(
  study: BusStudy,
  cable: Cable,
  runs: readonly Run[],
  serves: (other: Cable) => boolean,
): Fix[] {
  const { bus, store } = study;
  const used = store.buses.flatMap((one) => [one.cable, ...one.runs.map((run) => run.cable)]);
  const choices = new Set([...used, ...store.choices.cables]);
  const serving = [...choices].filter((other) => other !== undefined && other !== cable && serves(other)) as Cable[];
  if (cable === bus.cable && bus.runs.every((run) => run.spare || run.cable === cable)) {
    return serving.slice(0, mostChoices).map((other) => ({
      title: `Pull bus ${bus.name} on ${other.name}`,
      safe: false,
      edits: [
        { kind: 'set-bus-cable', bus: bus.index, cable: other.name },
        ...runs.flatMap((run): NetworkEdit[] =>
          run.cablePlace ? [{ kind: 'set-run-cable', bus: bus.index, run: run.index }] : [],
        ),
        ...earthEdits(study, cable, other),
        ...colourEdits(bus, other),
      ],
    }));
  }
  const main = mainCable(bus);
  if (main && main !== cable && serving.includes(main)) return [recable(bus, runs, main)];
  const alike = serving.filter(
    (other) => main && (main === cable || cableDifferences(other, main, bus.kind === 'free-topology').length === 0),
  );
  return alike.slice(0, mostChoices).map((other) => recable(bus, runs, other));
}

/** A shield that was not there before is earthed at the head. */
function earthEdits({ bus, head }: BusStudy, cable: Cable, other: Cable): NetworkEdit[] {
  if (!head || bus.earths.length || isShielded(cable) !== false || !isShielded(other)) return [];
  return [{ kind: 'earth-shield', bus: bus.index, landing: head.index }];
}

/** Colours that the other cable does not have give way to its own, in the maker's order. */
function colourEdits({ colours }: Bus, other: Cable): NetworkEdit[] {
  if (!colours) return [];
  const has = (colour: string | undefined) => colour === undefined || other.colours.includes(colour);
  if (has(colours.plus) && has(colours.minus) && has(colours.common)) return [];
  const [plus, minus, common] = other.colours;
  if (plus === undefined || minus === undefined || (colours.common !== undefined && common === undefined)) return [];
  const shield = colours.shield === undefined ? '' : ` shield ${colours.shield}`;
  const text = `colours + ${plus} - ${minus}${shield}${colours.common === undefined ? '' : ` common ${common}`}`;
  return [{ kind: 'write', place: colours.place, text }];
}
