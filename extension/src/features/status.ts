import { Disposable, LanguageStatusSeverity, languages } from 'vscode';
import type { CheckStatus } from '../../../server/src/protocol.js';
import type { Client, ServerState } from '../client.js';
import { describeStatus } from '../text/status-text.js';

const severities = {
  error: LanguageStatusSeverity.Error,
  warning: LanguageStatusSeverity.Warning,
  info: LanguageStatusSeverity.Information,
};

/** The item behind `{}` in the status bar: how many findings there are, and when and how fast they were found. */
export function status(client: Client): Disposable {
  const item = languages.createLanguageStatusItem('fieldpair.status', { language: 'fieldpair' });
  item.name = 'Fieldpair';
  let state: ServerState = 'starting';
  let last: CheckStatus | undefined;
  const show = () => {
    const { text, detail, severity, busy } = describeStatus(state, last, (time) => time.toLocaleTimeString());
    item.text = text;
    item.detail = detail;
    item.severity = severities[severity];
    item.busy = busy;
    item.command =
      state === 'stopped'
        ? { title: 'Restart', command: 'fieldpair.restartServer' }
        : { title: 'Show Problems', command: 'workbench.actions.view.problems' };
  };
  show();
  return Disposable.from(
    item,
    client.onState((next) => {
      state = next;
      // What a server said before it ended is true no longer.
      if (state !== 'running') last = undefined;
      show();
    }),
    client.onStatus((next) => {
      last = next;
      show();
    }),
  );
}
