/** Inlay hints: how far along the cable a landing is, which landings are the ends, which addresses are left out. */
import {
  type BusStudy,
  formatResistor,
  formatVolts,
  hasEnds,
  isUnknown,
  type Landing,
  lineOf,
  originOf,
} from '@fieldpair/shared';
import type { InlayHint, Range } from 'vscode-languageserver';
import type { SourceText } from '../build/source.js';
import type { Desk } from './desk.js';

export function inlayHints(desk: Desk, file: string, range: Range): InlayHint[] {
  const start = desk.offsetOf(file, range.start);
  const end = desk.offsetOf(file, range.end);
  const { hints: wanted } = desk.settings;
  const found: InlayHint[] = [];
  const add = (offset: number, label: string, tooltip: string) => {
    if (offset < start || end < offset) return;
    const position = desk.rangeOf({ file, start: offset, end: offset }).start;
    found.push({ position, label, tooltip, paddingLeft: true });
  };
  const source = desk.project.sourceOf(file);
  for (const one of desk.busesIn(file)) {
    const study = desk.studyOf(one);
    const behind = (offset: number) => (source && one.bus.damaged ? behindSlip(source, offset) : offset);
    const gaps = wanted.addressGaps ? addressGaps(study) : new Map<Landing, string>();
    for (const landing of one.bus.landings) {
      const visit = landing.visits[0];
      if (!visit || visit.place.file !== file) continue;
      const gap = gaps.get(landing);
      if (gap !== undefined && landing.address) {
        add(
          landing.address.place.end,
          gap,
          'Addresses between the landing before and this one that nothing on this bus has',
        );
      }
      const distance = study.shape.distance[landing.index];
      const origin = originOf(study.shape, landing.index);
      if (wanted.distance && distance !== undefined && landing.index !== origin) {
        const figure = landingFigure(study, landing);
        add(
          behind(visit.place.end),
          [study.lengthText(distance), ...(figure ? [figure.text] : [])].join(', '),
          `Along the cable from ${one.bus.landings[origin]?.name ?? ''}${figure ? `; ${figure.meaning}` : ''}`,
        );
      }
      if (wanted.ends && hasEnds(study) && study.shape.ends?.includes(landing.index))
        add(behind(visit.place.end), 'END', `An end of bus ${one.bus.name}`);
    }
  }
  return found;
}

/**
 * In a bus of which something cannot be read, as while it is typed, the end of the line: a hint in front of a word that is
 * being written would be in the way. A comment may follow.
 */
function behindSlip({ text }: SourceText, offset: number): number {
  const newline = text.indexOf('\n', offset);
  const rest = text.slice(offset, newline < 0 ? text.length : newline);
  return /^\s*(?:\/\/|\/\*|$)/.test(rest) ? offset : offset + rest.replace(/\r$/, '').length;
}

/** The one figure that tells most of a landing of a supply or a contact loop. */
function landingFigure(
  { bus, supply, contactLoop: loop }: BusStudy,
  { index }: Landing,
): { readonly text: string; readonly meaning: string } | undefined {
  if (bus.kind === 'supply' && !isUnknown(supply)) {
    const level = supply.volts[index];
    return level && !isUnknown(level)
      ? { text: formatVolts(level.nominal), meaning: 'the voltage with the stated loads' }
      : undefined;
  }
  if (bus.kind !== 'contact-loop' || isUnknown(loop)) return undefined;
  const alarm = loop.alarmAt[index];
  return (
    alarm && { text: `alarm ${formatResistor(alarm.resistance.nominal)}`, meaning: 'what the input sees in its alarm' }
  );
}

/** For landings whose address is more than one above that of the addressed landing before. */
function addressGaps({ store, bus }: BusStudy): Map<Landing, string> {
  const gaps = new Map<Landing, string>();
  const used = [
    ...new Set(lineOf(store, bus).flatMap(({ landings }) => landings.flatMap(({ address }) => address?.value ?? []))),
  ].sort((left, right) => left - right);
  const rank = new Map(used.map((address, index) => [address, index]));
  let previous: number | undefined;
  for (const landing of bus.landings) {
    const address = landing.address?.value;
    if (address === undefined) continue;
    // Neighbours in the text whose addresses follow each other on the whole line: nothing lies between them.
    if (previous !== undefined && previous + 1 < address && (rank.get(previous) ?? 0) + 1 === rank.get(address)) {
      gaps.set(
        landing,
        previous + 2 === address ? `${previous + 1} unused` : `${previous + 1} to ${address - 1} unused`,
      );
    }
    previous = address;
  }
  return gaps;
}
