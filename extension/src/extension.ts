/**
 * The VS Code extension: a client of the language server, and the few things that the protocol has no words for.
 *
 * Each feature is a file with one start function; what that returns is disposed of at the end. To add one, write the
 * file and add a row. The extension itself reads no `.pair` file and computes nothing.
 */
import { commands, type ExtensionContext } from 'vscode';
import { Client } from './client.js';
import { checkWorkspace } from './features/check-workspace.js';
import { drawing } from './features/drawing.js';
import { figures } from './features/figures.js';
import { fixAll } from './features/fix-all.js';
import { log } from './features/log.js';
import { packet } from './features/packet.js';
import { reference } from './features/reference.js';
import { restart } from './features/restart.js';
import { status } from './features/status.js';
import { waves } from './features/waves.js';

const features = [status, checkWorkspace, fixAll, drawing, figures, waves, packet, reference, restart, log];

export async function activate(context: ExtensionContext): Promise<void> {
  const client = new Client(context);
  context.subscriptions.push(client, ...features.map((start) => start(client)));
  // Menus of commands that are of use only while the extension runs ask for this.
  await commands.executeCommand('setContext', 'fieldpair.active', true);
  await client.start();
}
