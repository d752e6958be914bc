import { commands, type Disposable, ProgressLocation, window } from 'vscode';
import type { Client } from '../client.js';
import { describeCheck } from '../text/check-text.js';
import { registerCommand } from './command.js';

/** `Check Whole Workspace`: every `.pair` file, open or not, with the totals at the end. */
export function checkWorkspace(client: Client): Disposable {
  return registerCommand(client, 'fieldpair.checkWorkspace', async () => {
    const options = { location: ProgressLocation.Window, title: 'Fieldpair checks the whole workspace' };
    const check = await window.withProgress(options, () => client.request('fieldpair/checkWorkspace', undefined));
    const choice = await window.showInformationMessage(describeCheck(check), 'Show Problems');
    if (choice) await commands.executeCommand('workbench.actions.view.problems');
  });
}
