/** The title sheet: which store, which version, what is in the packet, what is still wrong with the plan. */

import { endsText, hasEnds } from '../figures/page/words.js';
import type { BusStudy } from '../figures/study.js';
import type { Finding } from '../finding.js';
import type { Store } from '../network.js';
import { counted } from '../plain-text.js';
import { formatNumber, formatRate } from '../quantity.js';
import { cautions } from './cautions.js';
import { type LengthUnits, lengthCells, lengthColumns, named, number, text } from './cells.js';
import { busTitle, cableText, storeTitle } from './names.js';
import type { Block, Fact } from './packet.js';

export interface TitleOptions {
  readonly date: string;
  readonly revision?: string;
  readonly units: LengthUnits;
  /** What the check of the store found; waived findings are agreed deviations. */
  readonly findings: readonly Finding[];
}

export function titleSheet(store: Store, studies: readonly BusStudy[], options: TitleOptions): Block[] {
  const facts: Fact[] = [
    { name: 'Store', value: storeTitle(store) },
    { name: 'Name in the plan', value: store.name },
    { name: 'Revision of the plan', value: options.revision ?? 'not under version control' },
    { name: 'Date of issue', value: options.date },
    { name: 'Devices', value: formatNumber(store.nodes.length) },
  ];
  return [
    { kind: 'facts', facts },
    ...(store.documentation === undefined ? [] : [{ kind: 'paragraph', text: store.documentation } satisfies Block]),
    ...openFindings(options.findings),
    { kind: 'cautions', texts: cautions },
    overview(studies, options.units),
    { kind: 'contents' },
    ...deviations(options.findings),
    { kind: 'signatures', lines: ['Issued by', 'Received by', 'Date', 'Installed by', 'Date'] },
  ];
}

/** More findings are a matter for whoever writes the plan. */
const mostShown = 30;

/** Nobody should build from a plan with errors without knowing that. */
function openFindings(findings: readonly Finding[]): Block[] {
  const open = findings.filter(({ severity, waived }) => severity !== 'info' && !waived);
  const errors = open.filter(({ severity }) => severity === 'error');
  const warnings = open.filter(({ severity }) => severity !== 'error');
  if (open.length === 0) {
    return [{ kind: 'paragraph', text: 'The check of this plan found no error and no warning that is still open.' }];
  }
  const counts = [
    ...(errors.length === 0 ? [] : [counted(errors.length, 'error')]),
    ...(warnings.length === 0 ? [] : [counted(warnings.length, 'warning')]),
  ];
  const shown = [...errors, ...warnings].slice(0, mostShown);
  const others = open.length - shown.length;
  const advice = errors.length === 0 ? '' : ' Do not build from it before they are settled.';
  return [
    { kind: 'paragraph', strong: true, text: `This plan has ${counts.join(' and ')} open.${advice}` },
    {
      kind: 'list',
      items: [
        ...shown.map(({ severity, message }) => `${severity}: ${message}`),
        ...(others === 0 ? [] : [`and ${others} more; the check of the plan lists them all`]),
      ],
    },
  ];
}

function deviations(findings: readonly Finding[]): Block[] {
  const items = findings.flatMap(({ message, waived }) =>
    waived ? [`${message} Agreed because: ${waived.reason}`] : [],
  );
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: 'Agreed deviations' },
        { kind: 'list', items },
      ];
}

function overview(studies: readonly BusStudy[], units: LengthUnits): Block {
  return {
    kind: 'table',
    table: {
      id: 'buses',
      title: 'Buses',
      columns: [
        { head: 'Bus', width: 22 },
        { head: 'Kind', width: 16 },
        { head: 'Cable', width: 22 },
        { head: 'Landings', width: 11 },
        ...lengthColumns('Length', units),
        { head: 'Ends', width: 20 },
      ],
      rows: studies.map((study, group) => ({
        group,
        cells: [
          named(busTitle(study.bus), study.bus.label === undefined ? undefined : study.bus.name),
          text(study.bus.kind ?? 'not known', speedText(study.bus)),
          text(cableText(study.bus.cable)),
          number(study.bus.landings.length),
          ...lengthCells(study.length, units),
          text(...endsLines(study)),
        ],
      })),
      notes: [],
    },
  };
}

/** The two ends where there are any that matter; else what the bus is instead. */
const endsLines = (study: BusStudy): string[] =>
  hasEnds(study) && study.shape.ends
    ? study.shape.ends.map((end) => study.bus.landings[end]?.name ?? '')
    : [endsText(study)];

/** `19,200 bit/s 8E1`; nothing for kinds without a rate. */
function speedText({ rate, format }: BusStudy['bus']): string | undefined {
  if (!rate) return undefined;
  const framing = format ? ` ${format.value.dataBits}${format.value.parity}${format.value.stopBits}` : '';
  return `${formatRate(rate.value)}${framing}`;
}
