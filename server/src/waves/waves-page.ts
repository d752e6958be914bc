/** What a client is shown of a bus's waveforms, from the plan of what was simulated and its answers. */
import type { WavePlan } from '@fieldpair/language/services';
import {
  formatNumber,
  formatSeconds,
  isUnknown,
  type Landing,
  type Place,
  seconds,
  type Unknown,
  verdictOf,
  type Waves,
  waveColumns,
  waveColumnsExplained,
  waveHeading,
  waveNotes,
  waveRow,
  waveSummary,
} from '@fieldpair/shared';
import {
  type DrawnPlot,
  drawWaves,
  lineStyle,
  plotOf,
  readoutOf,
  usualLandings,
  type WavePlot,
} from '@fieldpair/shared/plot';
import type { Position, WaveChoices, WaveLine, WavesCursor, WavesPage, WavesTable } from '../protocol.js';

/** The answers to a plan, in the order of its cases. */
export interface PlanAnswers {
  readonly written: Waves | Unknown;
  readonly changed?: Waves | Unknown;
}

export interface PlotSize {
  readonly width: number;
  readonly height: number;
}

type Locate = (place: Place) => { readonly uri: string; readonly range: { readonly start: Position } };

/** Sizes that a plot can still be read at, and that a client's mistake cannot blow up. */
const within = (value: number, least: number, most: number) =>
  Number.isFinite(value) ? Math.min(most, Math.max(least, Math.round(value))) : least;

/** @param locate where a stretch of text is for the client */
export function wavesPage(
  plan: WavePlan,
  answers: PlanAnswers,
  choices: WaveChoices,
  size: PlotSize,
  locate: Locate,
): WavesPage {
  const { store, bus, question } = plan.written;
  const { written, changed } = answers;
  const problems = [...plan.problems];
  if (changed && isUnknown(changed)) problems.push(`The waves ${plan.changed?.name} are unknown: ${changed.unknown}.`);
  const common = {
    title: `${store.name}, bus ${bus.name}`,
    store: store.name,
    bus: bus.name,
    buses: plan.buses.map((one) => ({ store: one.store.name, bus: one.bus.name })),
    driver: bus.landings[question.driver]!.name,
    drivers: bus.landings.filter(({ node }) => node).map(({ name }) => name),
    fixes: plan.fixes,
    faults: plan.faults,
    problems,
  };
  if (isUnknown(written)) {
    const landings = bus.landings.map(({ index }) => line(bus.landings[index]!, index, false, locate));
    return {
      ...common,
      landings,
      rate: '',
      edge: '',
      notes: [],
      unknown: `The waves of this bus cannot be told: ${written.unknown} is unknown.`,
    };
  }
  const known = changed && !isUnknown(changed) ? changed : undefined;
  const plot = plotFor(plan, written, known, choices, size, 'view');
  const styles = new Map(plot.curves.map(({ name, style }) => [name, style]));
  const drawn = drawWaves(plot);
  return {
    ...common,
    landings: written.landings.map(({ name, landing }) =>
      line(bus.landings[landing]!, styles.get(name) ?? landing, styles.has(name), locate),
    ),
    rate: `${formatNumber(1 / written.bitTime)} bit/s`,
    edge: `${formatSeconds(written.edge.time)}${written.edge.assumed ? ', assumed' : ''}`,
    summary: { written: waveSummary(written), ...(known ? { changed: waveSummary(known) } : {}) },
    notes: waveNotes(written),
    plot: { svg: drawn.svg, ...cursorOf(plot, drawn) },
    table: tableOf(written, known),
  };
}

/** The plot that a choice asks for; the same for the view and for a file. */
export function plotFor(
  plan: WavePlan,
  written: Waves,
  changed: Waves | undefined,
  choices: WaveChoices,
  size: PlotSize,
  use: 'view' | 'file',
): WavePlot {
  const subject = waveHeading(plan.written, written);
  const known = new Set(written.landings.map(({ name }) => name));
  const chosen = choices.landings?.filter((name) => known.has(name));
  return plotOf(written, {
    view: choices.view,
    landings: chosen?.length ? chosen : usualLandings(written),
    ...(changed && plan.changed ? { changed: { waves: changed, name: plan.changed.name, written: 'as written' } } : {}),
    ...shownSpan(written, choices),
    ...(use === 'file' ? { heading: subject } : {}),
    subject,
    width: within(size.width, 420, 4000),
    height: within(size.height, 240, 3000),
    prefix: 'waves',
  });
}

/** Shorter spans than this share of a bit show nothing more. */
const leastSpan = 0.01;

/** The span that is chosen, as far as it lies within the samples; nothing when that is all of them, or none. */
function shownSpan(
  { step, pattern, bitTime }: Waves,
  { span, view }: WaveChoices,
): { readonly shown?: readonly [number, number] } {
  const { time } = view === 'step' ? step : pattern;
  const [first, last] = [time[0], time.at(-1)];
  if (!Array.isArray(span) || first === undefined || last === undefined) return {};
  const [from, to] = [Math.max(first, span[0]), Math.min(last, span[1])];
  return leastSpan * bitTime <= to - from && to - from < last - first ? { shown: [from, to] } : {};
}

function line({ name, place }: Landing, number: number, shown: boolean, locate: Locate): WaveLine {
  const { className, dashes = '' } = lineStyle(number);
  const { uri, range } = locate(place);
  return { name, uri, position: range.start, shown, className, dashes };
}

function cursorOf(plot: WavePlot, { cursor }: DrawnPlot): { cursor?: WavesCursor } {
  if (!cursor) return {};
  const { times, lines } = readoutOf(plot, cursor);
  const [from, to] = cursor.time;
  const span = { from, to, bitTime: plot.bitTime, whole: plot.shown === undefined };
  return { cursor: { ...cursor.frame, ...span, times: times.map((time) => formatSeconds(seconds(time))), lines } };
}

function tableOf(written: Waves, changed: Waves | undefined): WavesTable {
  const reads = {
    sure: 'sure',
    typically: 'doubtful',
    'not sure': 'lost',
    'cut off': 'lost',
  } as const;
  const changedRow = (name: string) => {
    const one = changed?.landings.find((landing) => landing.name === name);
    // Read, margin: what a change is judged by.
    return one ? waveRow(one).slice(1, 3) : ['not on the bus', ''];
  };
  return {
    columns: [...waveColumns, ...(changed ? ['read, changed', 'margin, changed'] : [])],
    explained: waveColumnsExplained,
    rows: written.landings.map((one) => ({
      cells: [...waveRow(one), ...(changed ? changedRow(one.name) : [])],
      read: reads[verdictOf(one)],
    })),
  };
}
