/** What a user sets about how answers are shown. The severities of rules are settings of the check itself. */
export interface EditorSettings {
  /** In which unit lengths are shown; what is written stays as it is. */
  readonly lengthUnit: 'asWritten' | 'ft' | 'm';
  readonly hints: { readonly distance: boolean; readonly addressGaps: boolean; readonly ends: boolean };
  readonly codeLens: boolean;
}

export const defaultEditorSettings: EditorSettings = {
  lengthUnit: 'asWritten',
  hints: { distance: true, addressGaps: true, ends: true },
  codeLens: true,
};
