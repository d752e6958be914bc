/**
 * What the page of figures shows of a bus beside its limits, by kind of bus.
 *
 * To show another figure of a kind, add a fact or a column here; the page in the editor and `fieldpair figures` follow.
 */

import { listed } from '../../known.js';
import type { BusKind } from '../../network.js';
import { usualPoll } from '../../physics/modbus.js';
import { counted } from '../../plain-text.js';
import { formatSeconds } from '../../quantity.js';
import { cycleOf } from '../cycle.js';
import type { BusStudy } from '../study.js';
import { delayColumn, type Fact, type FiguresView, shown } from './figures-view.js';
import { canView, linkView, segmentView } from './other-views.js';
import { contactLoopView, supplyView } from './two-wire-views.js';
import { ohmsText, voltsText } from './words.js';

/** The pair of an RS-485 bus. */
const pair: FiguresView = {
  facts: (study) => [['loop resistance', ohmsText(study.loopResistance)], ...cycleFact(study)],
  columns: [
    {
      title: 'meter',
      meaning: 'an ohmmeter across the pair, everything connected, nothing powered',
      cell: (study, { index }) => shown(study.meter[index]!, ohmsText),
    },
    {
      title: 'idle',
      meaning: 'plus against minus while nobody drives',
      cell: (study, { index }) => shown(study.idle[index]!, voltsText),
    },
    {
      title: 'driven',
      meaning: 'the same while the head drives against the bias with the least that a driver must give',
      cell: (study, { index }) => shown(study.driven[index]!, voltsText),
    },
    delayColumn,
  ],
};

/** A kind that nobody knows: what its cable alone tells. */
const cableAlone: FiguresView = {
  facts: (study) => [['loop resistance', ohmsText(study.loopResistance)]],
  columns: [delayColumn],
};

const views: Readonly<Partial<Record<BusKind, FiguresView>>> = {
  rs485: pair,
  'modbus-rtu': pair,
  'bacnet-mstp': pair,
  'peer-485': pair,
  can: canView,
  'free-topology': segmentView,
  ethernet: linkView,
  'contact-loop': contactLoopView,
  supply: supplyView,
};

export const viewOf = (kind: BusKind | undefined): FiguresView => (kind && views[kind]) ?? cableAlone;

/** How long one round of the bus takes, where its protocol tells. */
function cycleFact(study: BusStudy): Fact[] {
  const cycle = cycleOf(study);
  if (!cycle) return [];
  const { devices, time, line } = cycle;
  const of = line.length === 1 ? '' : ` of ${listed(line.map(({ name }) => name))}, which repeaters join`;
  if (study.bus.kind === 'bacnet-mstp') {
    const masters = counted(devices, 'master', 'masters');
    return [['token cycle', `${formatSeconds(time)} for ${masters}${of}, while none has anything to send`]];
  }
  const { registers, replyDelay } = usualPoll;
  const assumed = `${registers} registers each, ${formatSeconds(replyDelay)} to answer`;
  return [['poll cycle', `${formatSeconds(time)} for ${counted(devices, 'device', 'devices')}${of} (${assumed})`]];
}
