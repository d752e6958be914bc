/** What the page of figures shows of supplies and contact loops. */
import type { SupplyForm, SupplyLoad, SupplySource } from '../../network.js';
import type { LoopState } from '../../physics/contact-loop.js';
import { type Feed, toleranceOf } from '../../physics/supply.js';
import {
  type Amperes,
  formatAmperes,
  formatNumber,
  formatOhms,
  formatResistor,
  formatVolts,
  formatWatts,
  type Watts,
} from '../../quantity.js';
import { type BusStudy, isUnknown } from '../study.js';
import { type Fact, type FiguresView, shown } from './figures-view.js';
import { amperesText, ohmsText, powerUnit, resistorText, voltsText, wattsText } from './words.js';

/** `350 mA`, `6 W`, or `6 VA` of an alternating supply. */
export const amountText = (
  amount: { readonly amperes: Amperes } | { readonly watts: Watts },
  form: SupplyForm | undefined,
): string => ('amperes' in amount ? formatAmperes(amount.amperes) : formatWatts(amount.watts, powerUnit(form)));

/** `24 V dc within 2 %, 4 A at most, class 2`. */
export function sourceText(source: SupplySource): string {
  const { voltage, form, limit, class: marked } = source;
  const within = `within ${formatNumber(toleranceOf(source) * 100, 1)} %${source.tolerance === undefined ? ' (taken as usual)' : ''}`;
  return [
    `${formatVolts(voltage)}${form === undefined ? '' : ` ${form}`} ${within}`,
    ...(limit ? [`${amountText(limit, form)} at most`] : []),
    ...(marked === undefined ? [] : [`class ${marked}`]),
  ].join(', ');
}

/** `350 mA dc above 18 V below 30 V`. */
export function loadText({ amount, form, least, most }: SupplyLoad): string {
  return [
    amountText(amount, form),
    ...(form === undefined ? [] : [form]),
    ...(least === undefined ? [] : [`above ${formatVolts(least)}`]),
    ...(most === undefined ? [] : [`below ${formatVolts(most)}`]),
  ].join(' ');
}

export const supplyView: FiguresView = {
  facts: ({ supply }) => (isUnknown(supply) ? [] : supply.feeds.flatMap(feedFacts)),
  columns: [
    {
      title: 'draws',
      meaning: 'what the catalogue says that the device takes, and the voltages between which it works',
      cell: (_, { port }) => (port?.draws ? loadText(port.draws) : ''),
    },
    {
      title: 'voltage',
      meaning:
        'with the stated loads; least with the source at its least and a warm cable, most with nothing drawn and the source at its most',
      cell: ({ supply }, { index }) => shown(isUnknown(supply) ? supply : supply.volts[index]!, voltsText),
    },
    {
      title: 'current',
      meaning: 'in the run that arrives by the shortest way; what is drawn at switching on (inrush) is not known',
      cell: ({ supply, shape }, { index }) => {
        const arrival = shape.reachedBy[index];
        if (arrival === undefined) return '';
        return shown(isUnknown(supply) ? supply : supply.amperes[arrival]!, amperesText);
      },
    },
  ],
};

function feedFacts({ landing, source, given, power, heat }: Feed): Fact[] {
  return [
    [`source at ${landing.name}`, sourceText(source)],
    ...(isUnknown(given)
      ? [['given', amperesText(given)] as const]
      : ([
          ['given', `${amperesText(given)}, ${wattsText(power, source.form)}`],
          ['lost in the cable', wattsText(heat)],
        ] as const)),
  ];
}

export const contactLoopView: FiguresView = {
  facts: ({ contactLoop: loop }) => {
    if (isUnknown(loop)) return [['input', `unknown: ${loop.unknown}`]];
    return [
      ['input', loop.input.name],
      ['cable, out and back', ohmsText(loop.cable)],
      ...loop.states.flatMap((state): Fact[] =>
        state.state === 'alarm' ? [] : [[stateNames[state.state], stateText(state)]],
      ),
    ];
  },
  columns: [
    {
      title: 'contact',
      meaning: 'how it rests and how it lies in the loop',
      cell: (_, { port, wiring }) => {
        if (!port?.contact) return '';
        const lies = wiring
          ? wiring.kind === 'across'
            ? 'across'
            : `breaks ${wiring.conductor === 'plus' ? '+' : '-'}`
          : 'unsaid';
        return `normally ${port.contact}, ${lies}`;
      },
    },
    {
      title: 'alarm',
      meaning:
        'what the input sees when this contact alone is in alarm; alike where no resistance tells which contact it is',
      cell: ({ contactLoop: loop }, { index }) =>
        shown(loop, ({ alarmAt, contacts }) => {
          const alarm = alarmAt[index];
          if (!alarm) return '';
          return `${stateText(alarm)}${alarm.toldApart || contacts.length < 2 ? '' : ', alike'}`;
        }),
    },
    {
      title: 'meter',
      meaning: 'an ohmmeter across the pair, the loop lifted off its input, all contacts at rest, nothing powered',
      cell: (study, { index }) => shown(study.meter[index]!, resistorText),
    },
  ],
};

const stateNames = {
  normal: 'normal',
  'all alarms': 'all contacts in alarm',
  cut: 'wire cut',
  short: 'wires shorted',
} as const;

/** `4.7 kohm (4.47 to 4.94 kohm), read as normal`. */
export function stateText({ resistance, reading }: LoopState): string {
  const { low, high } = resistance;
  const range =
    Number.isFinite(low) || Number.isFinite(high) ? resistorText(resistance) : formatOhms(resistance.nominal);
  if (reading === undefined) return range;
  return `${range}, ${reading === 'unsure' ? 'between readings' : `read as ${reading}`}`;
}

/** What the page of a loop says first, for places with room for one line. */
export function loopSummary({ contactLoop: loop }: BusStudy): string | undefined {
  if (isUnknown(loop)) return undefined;
  const [normal] = loop.states;
  return normal && `${loop.contacts.length} contacts, normal ${formatResistor(normal.resistance.nominal)}`;
}

/** The lowest voltage of any load at the worst, for places with room for one line. */
export function supplySummary({ supply }: BusStudy): string | undefined {
  if (isUnknown(supply)) return undefined;
  const levels = supply.feeds.flatMap(({ loads }) => loads.map(({ landing }) => supply.volts[landing.index]!));
  const least = levels.reduce(
    (low, level) => (isUnknown(level) ? low : Math.min(low, level.low)),
    Number.POSITIVE_INFINITY,
  );
  return Number.isFinite(least) ? `at least ${formatVolts(least as never)}` : undefined;
}
