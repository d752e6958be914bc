import { type CodeAction, commands, type Disposable, Range, window, workspace } from 'vscode';
import type { FixAllKind } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { registerCommand } from './command.js';

const kind: FixAllKind = 'source.fixAll.fieldpair';

/** `Fix All Safe Findings` of the active file, by the code action that editors can also run on saving. */
export function fixAll(client: Client): Disposable {
  return registerCommand(client, 'fieldpair.fixAll', async () => {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== 'fieldpair') return;
    const everywhere = new Range(0, 0, document.lineCount, 0);
    const actions = await commands.executeCommand<CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      everywhere,
      kind,
      1,
    );
    const edit = actions.find((action) => action.edit)?.edit;
    if (!edit) {
      window.setStatusBarMessage('Fieldpair: nothing here that can be fixed without asking.', 5000);
      return;
    }
    await workspace.applyEdit(edit);
  });
}
