/** Quick fixes for the findings under a selection, and one action that applies every safe fix of a file. */
import type { Finding } from '@fieldpair/shared';
import {
  type CodeAction,
  type CodeActionContext,
  CodeActionKind,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { changesOfFix, safeFixes } from '../edit/safe-fixes.js';
import type { TextChange } from '../edit/text-change.js';
import type { Desk } from './desk.js';
import { diagnosticOf, openFindings } from './diagnostics.js';

export const fixAllKind = 'source.fixAll.fieldpair';

/** @param only the kinds of action that the editor asks for; all when it names none. */
export function codeActions(
  desk: Desk,
  file: string,
  range: Range,
  { only }: Pick<CodeActionContext, 'only'>,
): CodeAction[] {
  const wanted = (kind: string) => !only || only.some((one) => kind === one || kind.startsWith(`${one}.`));
  const findings = openFindings(desk, file);
  const actions: CodeAction[] = [];
  if (wanted(CodeActionKind.QuickFix)) {
    const start = desk.offsetOf(file, range.start);
    const end = desk.offsetOf(file, range.end);
    for (const finding of findings) {
      if (finding.place.start <= end && start <= finding.place.end) actions.push(...quickFixes(desk, file, finding));
    }
  }
  if (wanted(fixAllKind)) {
    const changes = safeFixes(desk.project, file, findings).flatMap((fix) => fix.changes);
    if (changes.length) {
      actions.push({ title: 'Fix all safe findings of this file', kind: fixAllKind, edit: editOf(desk, changes) });
    }
  }
  return actions;
}

function quickFixes(desk: Desk, file: string, finding: Finding): CodeAction[] {
  const actions: CodeAction[] = [];
  const diagnostics = [diagnosticOf(desk, finding)];
  for (const fix of finding.fixes()) {
    const changes = changesOfFix(desk.project, file, finding, fix);
    if (!changes.length) continue;
    const action: CodeAction = {
      title: fix.title,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      edit: editOf(desk, changes),
    };
    if (actions.length === 0 && fix.safe) action.isPreferred = true;
    actions.push(action);
  }
  return actions;
}

function editOf(desk: Desk, changes: readonly TextChange[]): WorkspaceEdit {
  const edits: NonNullable<WorkspaceEdit['changes']> = {};
  for (const change of changes) {
    edits[change.file] ??= [];
    edits[change.file]?.push({ range: desk.rangeOf(change), newText: change.text });
  }
  return { changes: edits };
}
