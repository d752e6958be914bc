/**
 * The .pair language behind one door: reading text, building networks, edits and the formatter.
 *
 * Start reading at `fieldpair.langium` (what can be written), then `workspace/project.ts` (how texts become stores
 * and findings) and `build/` (from the tree to the network).
 */
export type { NameKind, NameUse, SourceText } from './build/source.js';
export { nameText, nearest } from './build/suggest.js';
export { type Move, moveLanding } from './edit/move-landing.js';
export { applyChanges, type SafeFix, safeFixes } from './edit/safe-fixes.js';
export type { TextChange } from './edit/text-change.js';
export { textChangesFor } from './edit/text-changes.js';
export { formatText } from './format/format.js';
export { readSheet } from './read/read-sheet.js';
export { keywords } from './read/scanner.js';
export { fileGroups } from './workspace/file-groups.js';
export type { Import } from './workspace/imports.js';
export { type PartCheck, type ProjectCheck, wholeCheck } from './workspace/part-check.js';
export { type FileHost, Project } from './workspace/project.js';
