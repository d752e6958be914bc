/** Puts the packet of one store together: title, one-line diagrams, and what each trade works from. */
import type { BusStudy } from '../figures/study.js';
import type { Finding } from '../finding.js';
import type { Store } from '../network.js';
import { counted } from '../plain-text.js';
import type { LengthUnit, Metres } from '../quantity.js';
import { addressTable, hostAddresses } from './address-table.js';
import type { LengthUnits } from './cells.js';
import { cleaned } from './clean.js';
import { commissioningSheet } from './commissioning-sheet.js';
import { diagram } from './diagram.js';
import { landingSchedule } from './landing-schedule.js';
import { busTitle, cableNames, storeTitle } from './names.js';
import type { Block, Packet, Paper, Sheet, SheetKind } from './packet.js';
import { partsList } from './parts-list.js';
import { pullList } from './pull-list.js';
import { type Slack, usualReel, usualSlack } from './slack.js';
import { titleSheet } from './title-sheet.js';

export interface PacketOptions {
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly revision?: string;
  readonly paper?: Paper;
  /** As most of the store's buses are written, when left out. */
  readonly unit?: LengthUnit | 'both';
  readonly slack?: Slack;
  readonly reel?: Metres;
  /** What the check of the store found. */
  readonly findings?: readonly Finding[];
}

/** The same store, studies and options give the same packet. @param studies of the store's buses, in their order. */
export function makePacket(store: Store, studies: readonly BusStudy[], options: PacketOptions): Packet {
  const { date, revision, paper = 'letter', slack = usualSlack, reel = usualReel, findings = [] } = options;
  const units = unitsFor(store, options.unit);
  const pull = { units, slack, reel, cableName: cableNames(store) };
  const sheets: Sheet[] = [];
  const add = (
    kind: SheetKind,
    title: string,
    landscape: boolean,
    blocks: readonly Block[],
    bus?: string,
    goesOn = false,
  ) =>
    sheets.push({
      id: `sheet-${sheets.length + 1}`,
      kind,
      title,
      landscape,
      blocks,
      ...(bus !== undefined && { bus }),
      ...(goesOn && { goesOn }),
    });

  const facts = { date, units, findings, ...(revision !== undefined && { revision }) };
  add('title', 'Installer\u2019s packet', false, titleSheet(store, studies, facts));
  for (const [index, study] of studies.entries()) {
    const bus = busTitle(study.bus);
    const id = (name: string) => `${name}-${index + 1}`;
    // In the order of the work.
    add('diagram', 'One-line diagram', false, diagram(store, study.bus, findings, units[0]), bus);
    add('pull-list', 'Pull and cut list', 1 < units.length, pullList(study, id('runs'), pull), bus);
    add('landing-schedule', 'Landing schedule', false, landingSchedule(study, id('landings'), units), bus);
    const addresses = addressTable(study, id('addresses'));
    if (addresses) add('address-table', 'Address table', false, addresses, bus, true);
    add('commissioning', 'Commissioning', 1 < units.length, commissioningSheet(study, id, units), bus);
  }
  const host = hostAddresses(store);
  if (0 < host.length) add('address-table', 'Address table', false, host);
  add('parts-list', 'Parts list', false, partsList(store, pull));
  const errors = findings.filter(({ severity, waived }) => severity === 'error' && !waived).length;
  return cleaned({
    store: store.name,
    title: storeTitle(store),
    date,
    paper,
    sheets,
    ...(0 < errors && { remark: `${counted(errors, 'error')} open in this plan: do not build from it` }),
    ...(revision !== undefined && { revision }),
  });
}

/** One unit for all sheets, because people carry one tape. */
function unitsFor({ buses }: Store, unit: PacketOptions['unit']): LengthUnits {
  const inFeet = buses.filter(({ lengthUnit }) => lengthUnit === 'ft').length;
  const written = buses.length <= 2 * inFeet ? 'ft' : 'm';
  if (unit === 'both') return written === 'ft' ? ['ft', 'm'] : ['m', 'ft'];
  return [unit ?? written];
}
