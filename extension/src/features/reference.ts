import { commands, type Disposable, Uri } from 'vscode';
import type { OpenReferenceCommand } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { registerCommand } from './command.js';

const command: OpenReferenceCommand = 'fieldpair.openReference';

/** `Open Language Reference`: the page that comes with the extension, as the editor shows Markdown. */
export function reference(client: Client): Disposable {
  const page = Uri.joinPath(client.extensionUri, 'language.md');
  return registerCommand(client, command, (heading?: string) =>
    commands.executeCommand('markdown.showPreview', page.with({ fragment: heading ?? '' })),
  );
}
