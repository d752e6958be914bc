import type { Place } from '@fieldpair/shared';
import type { SourceText } from '../build/source.js';
import type { FileHost } from './project.js';

/** One `import`: the path as written, where, and the file that it means (absent when nothing is written). */
export interface Import {
  readonly path: string;
  readonly place: Place;
  /** The whole statement. */
  readonly statement: Place;
  readonly target?: string;
}

export function readImports({ file, sheet }: SourceText, host: Pick<FileHost, 'resolve'>): Import[] {
  return sheet.imports.map(({ path, start, end }) => {
    const place = { file, start: path?.start ?? start, end: path?.end ?? end };
    const statement = { file, start, end };
    const written = path?.text ?? '';
    return written === ''
      ? { path: written, place, statement }
      : { path: written, place, statement, target: host.resolve(file, written) };
  });
}
