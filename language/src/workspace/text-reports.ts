/** What is wrong with a text before anything is built of it: its syntax, its imports, the names of its stores. */
import type { Fix, Place } from '@fieldpair/shared';
import type { Notes } from '../build/notes.js';
import type { SourceText } from '../build/source.js';
import { UniqueNames } from '../build/unique.js';
import type { Library } from './library.js';

/** Reports into `notes`. `hasHome` tells whether a store that is continued here has its main part somewhere. */
export function textReports(
  source: SourceText,
  library: Library,
  notes: Notes,
  hasHome: (store: string) => boolean,
): void {
  for (const { message, start, end, instead = [] } of source.problems) {
    const place = notes.place({ start, end });
    notes.report('syntax', message, place, { fixes: () => instead.map((text) => insteadFix(text, place, notes)) });
  }
  reportImports(source, library, notes);
  const unique = new UniqueNames('store', notes);
  for (const { name, continued } of library.storesIn(source.file)) {
    if (!continued) unique.add(name);
    else if (name?.text !== undefined && !hasHome(name.text)) {
      const message = `there is no store ${name.text} to continue; import the file that declares it, or leave out continued`;
      notes.report('unknown-name', message, notes.place(name));
    }
  }
}

function insteadFix(text: string, place: Place, notes: Notes): Fix {
  const title = text === '' ? `Remove ${notes.textAt(place)}` : `Change to ${text.trim()}`;
  return { title, safe: false, edits: [{ kind: 'write', place, text }] };
}

function reportImports({ file }: SourceText, library: Library, notes: Notes): void {
  for (const { path, place, statement, target } of library.entry(file)?.imports ?? []) {
    if (target === undefined) {
      notes.report('import-missing', 'this import names no file; write its path in quotes', place);
      continue;
    }
    const absent = library.absence(target);
    if (absent) {
      const message = `${path} cannot be read: ${absent.problem}`;
      // Of a file that is there, the path is not what is wrong.
      if (absent.missing) notes.report('import-missing', `${message}; correct the path`, place);
      else notes.report('import-unreadable', message, place);
    } else if (target === file) {
      notes.report('import-cycle', 'this file imports itself; remove the import', place, {
        unnecessary: true,
        fixes: () => [
          { title: 'Remove the import', safe: true, edits: [{ kind: 'write', place: statement, text: '' }] },
        ],
      });
    } else if (library.closure(target).files.includes(file)) {
      notes.report('import-cycle', `${path} imports this file in turn; move what both need into a third file`, place);
    }
  }
}
