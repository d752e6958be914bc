/** The box beside the cursor: what each line is at that moment, for the eye and for the ear. */
import type { WavesCursor } from '../../../../../server/src/protocol.js';
import { make } from '../../page/make.js';

const volts = (value: number | null | undefined) =>
  value === null || value === undefined ? '\u2013' : `${value.toFixed(3)} V`.replace('-', '\u2212');

/** @param classes the class of each line's colour @param index which of the cursor's times */
export function readoutRows(cursor: WavesCursor, index: number, classes: ReadonlyMap<string, string>): HTMLElement[] {
  const compared = cursor.lines.some(({ changed }) => changed);
  const cell = (className: string, text: string) => make('span', { className }, text);
  const heading = make(
    'div',
    { className: 'row' },
    cell('name time', cursor.times[index] ?? ''),
    ...(compared ? [cell('level', 'as written'), cell('level changed', 'changed')] : []),
  );
  const rows = cursor.lines.map(({ name, volts: levels, changed }) =>
    make(
      'div',
      { className: 'row' },
      cell(`swatch ${classes.get(name) ?? ''}`, ''),
      cell('name', name),
      cell('level', volts(levels[index])),
      ...(compared ? [cell('level changed', volts(changed?.[index]))] : []),
    ),
  );
  return [heading, ...rows];
}

/** The same as a sentence. */
export function readoutText(cursor: WavesCursor, index: number): string {
  const lines = cursor.lines.map(
    ({ name, volts: levels, changed }) =>
      `${name} ${volts(levels[index])}${changed ? `, changed ${volts(changed[index])}` : ''}`,
  );
  return [cursor.times[index] ?? '', ...lines].join('; ');
}
