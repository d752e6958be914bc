import type { Place } from '@fieldpair/shared';
import type { SourceText } from '../build/source.js';
import type { FileHost } from './project.js';

/** One `import`: the path as written, where, and the file that it means (absent when nothing is written). */
export interface Import {
  readonly path: string;
  readonly place: Place;
  readonly target?: string;
}

export function readImports({ file, sheet }: SourceText, host: Pick<FileHost, 'resolve'>): Import[] {
  return sheet.imports.map(({ path, start, end }) => {
    const place = { file, start: path?.start ?? start, end: path?.end ?? end };
    const written = path?.text ?? '';
    return written === '' ? { path: written, place } : { path: written, place, target: host.resolve(file, written) };
  });
}
