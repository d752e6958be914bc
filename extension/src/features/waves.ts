import { Disposable, Uri, window } from 'vscode';
import type { ShowWavesCommand } from '../../../server/src/protocol.js';
import type { Client } from '../client.js';
import { registerPanel } from '../panels/panel.js';
import { type WantedBus, WavesKeeper } from '../panels/waves/keeper.js';
import type { FromWavesPage, ToWavesPage } from '../panels/waves/messages.js';
import type { Place } from '../text/moved-place.js';
import { registerCommand } from './command.js';

const command: ShowWavesCommand = 'fieldpair.showWaves';

/** `Show Waveforms of This Bus`: what every landing sees while one of them drives, beside the text. */
export function waves(client: Client): Disposable {
  const wanted: WantedBus = {};
  let keeper: WavesKeeper | undefined;
  const panel = registerPanel<ToWavesPage, FromWavesPage>(client, {
    name: 'waves',
    title: (fileName) => `Waveforms: ${fileName}`,
    attend: (one) => {
      keeper = new WavesKeeper(client, one, wanted);
      return keeper;
    },
  });
  const show = (uri?: string, position?: Place) => {
    const place = uri && position ? { uri, position } : placeOfCursor();
    Object.assign(wanted, place);
    panel.show(place && Uri.parse(place.uri));
    keeper?.showWanted();
  };
  return Disposable.from(panel, registerCommand(client, command, show));
}

function placeOfCursor(): { readonly uri: string; readonly position: Place } | undefined {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== 'fieldpair') return undefined;
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri.toString(), position: { line, character } };
}
