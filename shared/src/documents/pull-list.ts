/** The pull and cut list of a bus: every run, how long it is cut, and room for what was pulled. */
import type { BusStudy } from '../figures/study.js';
import type { Bus, Run } from '../network.js';
import { counted } from '../plain-text.js';
import { formatAmperes, type LengthUnit, type Metres, metres } from '../quantity.js';
import {
  blank,
  empty,
  type LengthUnits,
  lengthCells,
  lengthColumns,
  lengthsText,
  named,
  nothing,
  number,
  text,
  tick,
} from './cells.js';
import type { Block, Column } from './packet.js';
import { cutLength, reelsFor, type Slack, slackText } from './slack.js';

export interface PullOptions {
  readonly units: LengthUnits;
  readonly slack: Slack;
  readonly reel: Metres;
  /** What a cable is called in a narrow column. */
  readonly cableName: (cable: Run['cable']) => string;
}

export function pullList({ bus }: BusStudy, id: string, options: PullOptions): Block[] {
  const { units, slack, cableName } = options;
  const columns: Column[] = [
    { head: 'Run', width: 5 },
    { head: 'From', width: 17 },
    { head: 'To', width: 17 },
    { head: 'Cable', width: 24 },
    ...lengthColumns('Planned', units),
    ...lengthColumns('Cut', units),
    ...lengthColumns('Built', units),
    { head: 'Mind', width: 15 },
    { head: 'Pulled', width: 7 },
  ];
  const rows = bus.runs.map((run, group) => ({
    group,
    cells: [
      number(run.index + 1),
      named(nameOf(bus, run.from)),
      run.to === undefined ? nothing : named(nameOf(bus, run.to)),
      text(cableName(run.cable)),
      ...lengthCells(run.planned, units),
      ...lengthCells(cutLength(run.planned, slack, units[0]), units),
      ...(run.built ? lengthCells(run.built.value, units) : units.map(() => blank)),
      remarks(run, units),
      tick,
    ],
  }));
  const sum = (lengthOf: (run: Run) => number) => metres(bus.runs.reduce((total, run) => total + lengthOf(run), 0));
  const total = {
    group: rows.length,
    total: true,
    cells: [
      empty,
      named('All runs'),
      empty,
      empty,
      ...lengthCells(
        sum(({ planned }) => planned),
        units,
      ),
      ...lengthCells(
        sum(({ planned }) => cutLength(planned, slack, units[0])),
        units,
      ),
      ...units.map(() => empty),
      empty,
      empty,
    ],
  };
  return [
    {
      kind: 'table',
      table: {
        id,
        title: `Runs of ${bus.label ?? bus.name}`,
        columns,
        rows: rows.length === 0 ? [] : [...rows, total],
        notes: [
          `Cut: ${slackText(slack, units)}.`,
          ...reelNotes(bus, options),
          'Mark both ends of each run with the bus and its number before pulling. Write the real length under built.',
        ],
      },
    },
  ];
}

/** What is cut of each cable, and how many reels that takes when no other bus is cut from them. */
function reelNotes(bus: Bus, { units, slack, reel, cableName }: PullOptions): string[] {
  return [...cutsByCable([bus], slack, units[0])].map(([cable, { cuts }]) => {
    const sum = lengthsText(metres(cuts.reduce((total, cut) => total + cut, 0)), units);
    const reels = reelsFor(cuts, reel);
    const from =
      reels === undefined
        ? 'a run is longer than a reel: order a longer one'
        : `${counted(reels, 'reel')} of ${lengthsText(reel, units)} for this bus alone`;
    return `Cable: ${sum} of ${cableName(cable)} in ${counted(cuts.length, 'piece')}; ${from}.`;
  });
}

const nameOf = (bus: Bus, landing: number) => bus.landings[landing]?.name ?? '';

function remarks({ tap, spare, besideMains, to, cords, fuse }: Run, units: LengthUnits) {
  const lines = [
    ...(tap ? ['tap'] : []),
    ...(spare
      ? ['spare: mark it and connect neither end']
      : to === undefined
        ? ['its end is not planned yet; ask']
        : []),
    ...(fuse ? [`fuse ${formatAmperes(fuse.value)} at its start`] : []),
    ...(cords ? [`patch cords of ${lengthsText(cords.length, units)} together`] : []),
    ...(besideMains ? ['beside mains: keep apart'] : []),
  ];
  return lines.length === 0 ? nothing : text(...lines);
}

/** Cut lengths by cable, over some buses, in the order in which the cables are met; runs of unstated cable together. */
export function cutsByCable(
  buses: readonly Bus[],
  slack: Slack,
  unit: LengthUnit,
): Map<Run['cable'], { cuts: Metres[]; buses: Set<Bus> }> {
  const byCable = new Map<Run['cable'], { cuts: Metres[]; buses: Set<Bus> }>();
  for (const bus of buses) {
    for (const { cable, planned } of bus.runs) {
      const known = byCable.get(cable) ?? { cuts: [], buses: new Set() };
      known.cuts.push(cutLength(planned, slack, unit));
      known.buses.add(bus);
      byCable.set(cable, known);
    }
  }
  return byCable;
}
