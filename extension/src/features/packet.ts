import { commands, Disposable, ProgressLocation, Uri, ViewColumn, type WebviewPanel, window, workspace } from 'vscode';
import type { PacketFormat, PacketParams } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { registerCommand } from './command.js';

const viewType = 'fieldpair.packet';

/** What can be saved, as a person chooses it. */
const formats: readonly { readonly label: string; readonly description: string; readonly format: PacketFormat }[] = [
  { label: 'PDF', description: 'to print', format: 'pdf' },
  { label: 'HTML', description: 'one file, for a phone or a browser', format: 'html' },
  { label: 'XLSX', description: 'a workbook with a sheet for each table', format: 'xlsx' },
  { label: 'CSV', description: 'a file for each table', format: 'csv' },
  { label: 'SVG', description: 'the diagrams', format: 'svg' },
];

/** `Make the Installer's Packet`: the packet of the store at the cursor, to look at; `Save Packet…` writes it. */
export function packet(client: Client): Disposable {
  let open: { readonly panel: WebviewPanel; params: PacketParams } | undefined;

  const make = async (source?: Uri) => {
    const params = placeOfCursor(source);
    if (!params) {
      void window.showInformationMessage('Open a .pair file first.');
      return;
    }
    const title = 'Fieldpair makes the installer\u2019s packet';
    const page = await window.withProgress({ location: ProgressLocation.Window, title }, () =>
      client.request('fieldpair/packet', params),
    );
    if (!page) {
      void window.showInformationMessage('There is no store in this file.');
      return;
    }
    const shown = open ?? { panel: newPanel(), params };
    open = shown;
    shown.params = params;
    shown.panel.title = `Packet: ${page.title}`;
    shown.panel.webview.html = page.html;
    shown.panel.reveal(undefined, true);
  };

  const newPanel = () => {
    const column = { viewColumn: ViewColumn.Beside, preserveFocus: true };
    // The document has a policy of its own, by which it loads and runs nothing.
    const panel = window.createWebviewPanel(viewType, 'Packet', column, {
      enableScripts: false,
      enableFindWidget: true,
      localResourceRoots: [],
    });
    const icon = (theme: string) => Uri.joinPath(client.extensionUri, 'icons', `pair-file-${theme}.svg`);
    panel.iconPath = { light: icon('light'), dark: icon('dark') };
    panel.onDidDispose(() => {
      open = undefined;
    });
    return panel;
  };

  const save = async () => {
    if (!open) {
      await make();
      if (!open) return;
    }
    const { params } = open;
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
    const wanted = { ...params, folder: folder.toString(), formats: chosen.map(({ format }) => format) };
    const title = 'Fieldpair writes the installer\u2019s packet';
    const saved = await window.withProgress({ location: ProgressLocation.Notification, title }, () =>
      client.request('fieldpair/savePacket', wanted),
    );
    if ('problem' in saved) throw new Error(saved.problem);
    const written = Uri.parse(saved.folder);
    const files = `${saved.files} ${saved.files === 1 ? 'file' : 'files'}`;
    const choice = await window.showInformationMessage(`${files} written to ${written.fsPath}.`, 'Show in Folder');
    if (choice) await commands.executeCommand('revealFileInOS', written);
  };

  return Disposable.from(
    registerCommand(client, 'fieldpair.makePacket', make),
    registerCommand(client, 'fieldpair.savePacket', save),
    new Disposable(() => open?.panel.dispose()),
  );
}

/** A menu names the file; where the cursor is in it chooses the store. */
function placeOfCursor(source: Uri | undefined): PacketParams | undefined {
  const editor = window.activeTextEditor;
  const isShown = editor && (source === undefined || editor.document.uri.toString() === source.toString());
  if (isShown && editor.document.languageId !== 'fieldpair') return undefined;
  const uri = isShown ? editor.document.uri : source;
  if (!uri) return undefined;
  const { line, character } = isShown ? editor.selection.active : { line: 0, character: 0 };
  const paper = workspace.getConfiguration('fieldpair').get<'letter' | 'a4'>('paper', 'letter');
  return { uri: uri.toString(), position: { line, character }, paper, date: today() };
}

function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
