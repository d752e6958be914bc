/** Our requests about waveforms: what is shown of a bus, the same as a file, and what the bus allows. */
import { type Desk, planWaves, type WaveCase, type WavePlan } from '@fieldpair/language/services';
import { adviceText, isUnknown } from '@fieldpair/shared';
import { drawWaves } from '@fieldpair/shared/plot';
import { type Connection, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type {
  ServerRequests,
  WavesAdviceParams,
  WavesFile,
  WavesFileParams,
  WavesPage,
  WavesParams,
} from '../protocol.js';
import { type NamedWaves, waveCsv } from '../waves/wave-csv.js';
import type { Cancellation, WaveRunner } from '../waves/wave-runner.js';
import { type PlanAnswers, plotFor, wavesPage } from '../waves/waves-page.js';
import { fileOf } from './disk.js';

const superseded = () => new ResponseError(LSPErrorCodes.RequestCancelled, 'A newer question has taken its place.');

export function serveWaves(connection: Connection, desk: Desk, runner: WaveRunner): void {
  const simulated = async (plan: WavePlan, name: string, token: Cancellation): Promise<PlanAnswers> => {
    const cases: readonly WaveCase[] = plan.changed ? [plan.written, plan.changed] : [plan.written];
    const jobs = cases.map(({ store, bus, question }) => ({ store, bus: bus.index, questions: [question] }));
    const answers = await runner.ask(name, jobs, token);
    if (!answers) throw superseded();
    const [written, changed] = answers.map(([first]) => first!);
    return { written: written!, ...(changed ? { changed } : {}) };
  };

  connection.onRequest(
    'fieldpair/waves' satisfies keyof ServerRequests,
    async (params: WavesParams, token): Promise<WavesPage | null> => {
      const plan = planWaves(desk, fileOf(params.uri), params.choices, params.position);
      return plan
        ? wavesPage(plan, await simulated(plan, 'view', token), params.choices, params, (place) =>
            desk.locationOf(place),
          )
        : null;
    },
  );

  connection.onRequest(
    'fieldpair/wavesAdvice' satisfies keyof ServerRequests,
    async (params: WavesAdviceParams, token): Promise<readonly string[] | null> => {
      const plan = planWaves(desk, fileOf(params.uri), params.choices, params.position);
      if (!plan) return null;
      const { store, bus, question } = plan.written;
      const advice = await runner.askAdvice('advice', { store, bus: bus.index, driver: question.driver }, token);
      if (!advice) throw superseded();
      return isUnknown(advice) ? [] : adviceText(desk.studyOf({ store, bus }), advice);
    },
  );

  connection.onRequest(
    'fieldpair/wavesFile' satisfies keyof ServerRequests,
    async (params: WavesFileParams, token): Promise<WavesFile | null> => {
      const plan = planWaves(desk, fileOf(params.uri), params.choices, params.position);
      if (!plan) return null;
      const { written, changed } = await simulated(plan, 'file', token);
      if (isUnknown(written))
        throw new ResponseError(LSPErrorCodes.RequestFailed, `There is nothing to keep; unknown: ${written.unknown}`);
      const known = changed && !isUnknown(changed) ? changed : undefined;
      const { store, bus } = plan.written;
      const name = `${store.name}-${bus.name}-${params.choices.view}.${params.format}`.replaceAll(
        /[^\p{L}\p{N}._-]/gu,
        '-',
      );
      if (params.format === 'svg')
        return { name, text: `${drawWaves(plotFor(plan, written, known, params.choices, params, 'file')).svg}\n` };
      const sets: NamedWaves[] = [{ name: '', waves: written }];
      if (known && plan.changed) sets.push({ name: plan.changed.name, waves: known });
      return { name, text: waveCsv(sets, params.choices.view === 'step' ? 'step' : 'pattern') };
    },
  );
}
