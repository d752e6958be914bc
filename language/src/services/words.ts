/** Figures as people read them, for hovers, lenses and the page of figures. */
import {
  type BusStudy,
  formatOhms,
  formatSeconds,
  formatVolts,
  isUnknown,
  type Known,
  type Landing,
  type Ohms,
  type Range,
  type Seconds,
  type Volts,
} from '@fieldpair/shared';

/** `61.8 ohm (60.1 to 63.4 ohm)`, or why it is unknown. */
export function rangeText<T extends number>(range: Known<Range<T>>, format: (value: T) => string): string {
  if (isUnknown(range)) return `unknown: ${range.unknown}`;
  const nominal = format(range.nominal);
  const low = format(range.low);
  const high = format(range.high);
  return low === high ? nominal : `${nominal} (${low} to ${high})`;
}

export const ohmsText = (value: Known<Range<Ohms>>) => rangeText(value, formatOhms);
export const voltsText = (value: Known<Range<Volts>>) => rangeText(value, formatVolts);
export const secondsText = (value: Known<Seconds>) =>
  isUnknown(value) ? `unknown: ${value.unknown}` : formatSeconds(value);

export function kindText({ bus }: BusStudy): string {
  const rate = bus.rate ? ` ${bus.rate.value}` : '';
  const format = bus.format
    ? ` ${bus.format.value.dataBits}${bus.format.value.parity}${bus.format.value.stopBits}`
    : '';
  return `${bus.kind ?? 'unknown kind'}${rate}${format}`;
}

/** `head.field2 and caseA2`, or what the bus is instead of a plain chain. */
export function endsText({ bus, shape }: BusStudy): string {
  const names = shape.ends?.map((end) => bus.landings[end]?.name ?? '');
  if (names) return `ends at ${names.join(' and ')}`;
  if (shape.components.length > 1) return `in ${shape.components.length} separate pieces`;
  if (shape.closing.length) return 'a ring, without ends';
  return shape.branches.length ? 'branched, without two plain ends' : 'one landing, without ends';
}

export function summaryText(study: BusStudy): string {
  const count = study.bus.landings.length;
  return `${study.lengthText(study.length)} · ${count} ${count === 1 ? 'landing' : 'landings'} · ${endsText(study)}`;
}

export function terminationText({ terminations }: Landing): string | undefined {
  if (!terminations.length) return undefined;
  return terminations
    .map(({ means, resistance }) => `${formatOhms(resistance)} by ${means === 'fixed' ? 'its fixed resistor' : means}`)
    .join(', ');
}

/** Text of a user's file, taken literally in the middle of a line of Markdown. */
export const literal = (text: string): string => text.replace(/[\\`*_{}[\]<>|~&#]/g, '\\$&').replace(/\s+/g, ' ');

/** The same for several lines, whose beginnings mean lists and headings to Markdown. */
export const literalLines = (text: string): string =>
  text
    .split('\n')
    .map((line) =>
      literal(line.trim()).replace(/^(?:[-+=]|\d+(?=[.)]))/, (start) =>
        /\d/.test(start) ? `${start}\\` : `\\${start}`,
      ),
    )
    .join('  \n');
