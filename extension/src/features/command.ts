import { commands, type Disposable, window } from 'vscode';
import type { Client } from '../client.js';

/** Registers a command of the user's; should it fail, one line says why and the log says the rest. */
export function registerCommand<Parameters extends unknown[]>(
  client: Client,
  id: string,
  run: (...parameters: Parameters) => unknown,
): Disposable {
  return commands.registerCommand(id, async (...parameters: Parameters) => {
    try {
      await run(...parameters);
    } catch (error) {
      client.log.error(error instanceof Error ? error : String(error));
      const reason = error instanceof Error ? error.message : String(error);
      const choice = await window.showErrorMessage(`Fieldpair: ${reason}`, 'Show Log');
      if (choice) client.log.show();
    }
  });
}
