import { resolve } from 'node:path';
import { commands, Disposable, ProgressLocation, Uri, window, workspace } from 'vscode';
import type { PacketFormat, PacketParams } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { PacketKeeper, packetParams } from '../panels/packet/keeper.js';
import type { FromPacketPage, ToPacketPage } from '../panels/packet/messages.js';
import { registerPanel } from '../panels/panel.js';
import { counted } from '../text/counted.js';
import { registerCommand } from './command.js';

/** What can be saved, as a person chooses it. */
const formats: readonly { readonly label: string; readonly description: string; readonly format: PacketFormat }[] = [
  { label: 'PDF', description: 'to print', format: 'pdf' },
  { label: 'HTML', description: 'one file, for a phone or a browser', format: 'html' },
  { label: 'XLSX', description: 'a workbook with a sheet for each table', format: 'xlsx' },
  { label: 'CSV', description: 'a file for each table', format: 'csv' },
  { label: 'SVG', description: 'the diagrams', format: 'svg' },
];

/** `Make the Installer's Packet`: the packet beside the text, which it follows; `Save Packet…` writes it. */
export function packet(client: Client): Disposable {
  let keeper: PacketKeeper | undefined;
  const panel = registerPanel<ToPacketPage, FromPacketPage>(client, {
    name: 'packet',
    title: (fileName) => `Packet: ${fileName}`,
    searchable: true,
    attend: (one) => {
      const made = new PacketKeeper(client, one);
      keeper = made;
      return {
        refresh: () => made.refresh(),
        dispose: () => {
          made.dispose();
          if (keeper === made) keeper = undefined;
        },
      };
    },
  });

  const make = (source?: Uri) => {
    panel.show(source);
    const editor = editorOf(source);
    if (editor) keeper?.show(editor.selection.active);
  };

  const save = async () => {
    const params = paramsOf(keeper);
    if (!params) {
      void window.showInformationMessage('Open a .pair file first.');
      return;
    }
    const chosen = await window.showQuickPick(
      formats.map((one) => ({ ...one, picked: one.format === 'pdf' || one.format === 'html' })),
      { canPickMany: true, title: 'Save the packet as', placeHolder: 'Formats' },
    );
    if (!chosen?.length) return;
    const [folder] =
      (await window.showOpenDialog({
        canSelectFiles: false,
        canSelectFolders: true,
        openLabel: 'Save Packet Here',
        ...(workspace.workspaceFolders?.[0] && { defaultUri: workspace.workspaceFolders[0].uri }),
      })) ?? [];
    if (!folder) return;
    const font = fontFor(Uri.parse(params.uri));
    const wanted = {
      ...params,
      folder: folder.toString(),
      formats: chosen.map(({ format }) => format),
      ...(font !== undefined && { font }),
    };
    const title = 'Fieldpair writes the installer\u2019s packet';
    const saved = await window.withProgress({ location: ProgressLocation.Notification, title }, () =>
      client.request('fieldpair/savePacket', wanted),
    );
    if ('problem' in saved) throw new Error(saved.problem);
    const written = Uri.parse(saved.folder);
    const message = `${counted(saved.files, 'file')} written to ${written.fsPath}.`;
    const { lacking } = saved;
    const choice = await (lacking === undefined
      ? window.showInformationMessage(message, showInFolder)
      : window.showWarningMessage(`${message} ${lackingText(lacking)}`, showInFolder, chooseFont));
    if (choice === showInFolder) await commands.executeCommand('revealFileInOS', written);
    if (choice === chooseFont) await commands.executeCommand('workbench.action.openSettings', 'fieldpair.font');
  };

  return Disposable.from(
    panel,
    registerCommand(client, 'fieldpair.makePacket', make),
    registerCommand(client, 'fieldpair.savePacket', save),
  );
}

const showInFolder = 'Show in Folder';
const chooseFont = 'Choose a Font';

const lackingText = (lacking: string): string =>
  `Its PDF has boxes for ${counted([...lacking].length, 'character')} that its typeface lacks, ${lacking}.`;

/** The font file of the settings; a path that is not whole starts at the folder of the workspace that has the text. */
function fontFor(source: Uri): string | undefined {
  const font = workspace.getConfiguration('fieldpair', source).get<string>('font', '').trim();
  if (font === '') return undefined;
  const folder = (workspace.getWorkspaceFolder(source) ?? workspace.workspaceFolders?.[0])?.uri.fsPath;
  return folder === undefined ? font : resolve(folder, font);
}

/** An editor that shows a text; the active one when none is named and it shows a `.pair` text. */
function editorOf(source: Uri | undefined) {
  const editor = source
    ? window.visibleTextEditors.find(({ document }) => document.uri.toString() === source.toString())
    : window.activeTextEditor;
  return editor?.document.languageId === 'fieldpair' ? editor : undefined;
}

/** The packet of the store at the cursor; that of the page when no text has the focus. */
function paramsOf(keeper: PacketKeeper | undefined): PacketParams | undefined {
  const editor = editorOf(undefined);
  return editor ? packetParams(editor.document.uri.toString(), editor.selection.active) : keeper?.params;
}
