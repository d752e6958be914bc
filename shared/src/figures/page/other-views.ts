/** What the page of figures shows of CAN, free topology and Ethernet. */

import { listed } from '../../known.js';
import { segmentLimits, unclassedCables } from '../../limits/free-topology.js';
import { inputOf, loopDelayOf, propagation, samplePointOf } from '../../physics/can.js';
import { formatNumber, formatOhms, formatSeconds, metres, type Seconds, seconds } from '../../quantity.js';
import { linkResistance } from '../links.js';
import { type BusStudy, isUnknown } from '../study.js';
import { delayColumn, type Fact, type FiguresView, type LandingColumn, shown } from './figures-view.js';
import { ohmsText, secondsText, voltsText } from './words.js';

const meter: LandingColumn = {
  title: 'meter',
  meaning: 'an ohmmeter across the pair, everything connected, nothing powered',
  cell: (study, { index }) => shown(study.meter[index]!, ohmsText),
};

export const canView: FiguresView = {
  facts: (study) => [
    ['loop resistance', ohmsText(study.loopResistance)],
    ...bitFacts(study),
    ['nodes', nodesText(study)],
  ],
  columns: [
    meter,
    {
      title: 'recessive',
      meaning: 'CAN_H against CAN_L while nobody drives, both near 2.5 V above common',
      cell: (study, { index }) => shown(study.idle[index]!, voltsText),
    },
    {
      title: 'dominant',
      meaning: 'the same while the end that reaches the landing more weakly drives with the least that it must give',
      cell: (study, { index }) => shown(study.driven[index]!, voltsText),
    },
    delayColumn,
  ],
};

/** How a bit is shared out between the way there and back and what is left before it is sampled. */
function bitFacts(study: BusStudy): Fact[] {
  const { bus, bitTime } = study;
  const found = propagation(study);
  if (isUnknown(bitTime)) return [['bit time', secondsText(bitTime)]];
  const share = `${formatNumber(samplePointOf(bus) * 100, 1)} %${bus.samplePoint ? '' : ', as is usual'}`;
  const bit: Fact = ['bit time', `${formatSeconds(bitTime)}, sampled at ${share}`];
  if (isUnknown(found)) return [bit, ['slowest answer', `unknown: ${found.unknown}`]];
  if (!found) return [bit];
  const { from, to, time, slack } = found;
  const loops = [from, to].map((landing) => formatSeconds(loopDelayOf(landing)));
  const assumed = [from, to].some(({ port }) => port?.delay === undefined) ? ', the most where unsaid' : '';
  const text = `from ${from.name} to ${to.name} and back in ${formatSeconds(time)} (transceivers ${loops.join(' and ')}${assumed}), ${slackText(slack)}`;
  return [bit, ['slowest answer', text]];
}

const slackText = (slack: Seconds) =>
  slack < 0 ? `${formatSeconds(seconds(-slack))} after the sample` : `${formatSeconds(slack)} before the sample`;

function nodesText({ bus }: BusStudy): string {
  const nodes = bus.landings.filter(({ node }) => node);
  const least = nodes.reduce((low, landing) => Math.min(low, inputOf(landing)), Number.POSITIVE_INFINITY);
  const unsaid = nodes.some(({ port }) => port?.resistance === undefined)
    ? ', the least that a node may, where unsaid'
    : '';
  return nodes.length === 0 ? '0' : `${nodes.length} of ${formatOhms(least as never)} or more${unsaid}`;
}

export const segmentView: FiguresView = {
  facts: (study) => [
    ['class of cable', classText(study)],
    ['farthest apart', farthestText(study)],
  ],
  columns: [
    {
      ...meter,
      meaning:
        'an ohmmeter across the pair, nothing powered; open is right, reached slowly while the capacitors charge',
    },
    delayColumn,
  ],
};

function classText({ bus }: BusStudy): string {
  const unclassed = unclassedCables(bus);
  return unclassed.length === 0
    ? segmentLimits(bus).cable
    : `unknown: ${listed(unclassed)} ${unclassed.length === 1 ? 'does' : 'do'} not say; held against what any cable may have`;
}

function farthestText({ bus, farthest, shape, lengthText }: BusStudy): string {
  if (isUnknown(farthest)) return `unknown: ${farthest.unknown}`;
  if (!farthest) return 'no two devices';
  const round = shape.closing.length > 0 ? ', the longest way round' : '';
  return `${lengthText(metres(farthest.length))}, from ${bus.landings[farthest.from]!.name} to ${bus.landings[farthest.to]!.name}${round}`;
}

export const linkView: FiguresView = {
  start: 'the first landing of its link',
  facts: () => [],
  columns: [
    {
      title: 'link to',
      cell: ({ bus, links }, { index, splice }) => {
        const link = links.find(({ from, to }) => from === index || to === index);
        if (!link && splice !== undefined) return '';
        return link
          ? bus.landings[link.from === index ? link.to : link.from]!.name
          : { unknown: 'no cable leads there' };
      },
    },
    {
      title: 'loop',
      meaning: 'out and back through one pair of the fixed cable of its link',
      cell: (study, { index, splice }) => {
        const link = study.links.find(({ from, to }) => from === index || to === index);
        if (!link && splice !== undefined) return '';
        return link ? shown(linkResistance(study, link), ohmsText) : { unknown: 'no cable leads there' };
      },
    },
    delayColumn,
  ],
};
