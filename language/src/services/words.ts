/** Short texts of hovers and lenses, and how the text of a user goes into Markdown. */
import {
  type BusStudy,
  endsText,
  formatFarads,
  formatOhms,
  type Landing,
  loopSummary,
  supplySummary,
} from '@fieldpair/shared';

export function summaryText(study: BusStudy): string {
  const count = study.bus.landings.length;
  const what = loopSummary(study) ?? supplySummary(study) ?? endsText(study);
  return `${study.lengthText(study.length)} · ${count} ${count === 1 ? 'landing' : 'landings'} · ${what}`;
}

export function terminationText({ terminations }: Landing): string | undefined {
  if (!terminations.length) return undefined;
  return terminations
    .map(({ means, resistance, capacitance }) => {
      const series = capacitance === undefined ? '' : ` with ${formatFarads(capacitance)} in series`;
      return `${formatOhms(resistance)}${series} by ${means === 'fixed' ? 'its fixed resistor' : means}`;
    })
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
