import { commands, type Disposable, ProgressLocation, window } from 'vscode';
import type { Client } from '../client.js';
import { describeCheck } from '../text/check-text.js';

/** `Check Whole Workspace`: every `.pair` file, open or not, with the totals at the end. */
export function checkWorkspace(client: Client): Disposable {
  return commands.registerCommand('fieldpair.checkWorkspace', async () => {
    const options = { location: ProgressLocation.Notification, title: 'Fieldpair: checking the whole workspace' };
    const check = await window.withProgress({ ...options, cancellable: true }, async (_progress, token) => {
      const result = await client.request('fieldpair/checkWorkspace', undefined, token);
      return token.isCancellationRequested ? undefined : result;
    });
    if (!check) return;
    const choice = await window.showInformationMessage(describeCheck(check), 'Show Problems');
    if (choice) await commands.executeCommand('workbench.actions.view.problems');
  });
}
