/** What other threads of this program can do, each kind with what answers one task of it. */
import type { checkTask } from '../cli/check/check-task.js';
import type { packetOfTask } from '../packet/packet-task.js';

/** All that passes between threads is plain data. */
export interface ThreadWork {
  readonly check: typeof checkTask;
  readonly packets: typeof packetOfTask;
}

/** A thread loads what it does, and nothing else. */
export const threadWork: { readonly [Work in keyof ThreadWork]: () => Promise<ThreadWork[Work]> } = {
  check: async () => (await import('../cli/check/check-task.js')).checkTask,
  packets: async () => (await import('../packet/packet-task.js')).packetOfTask,
};

export type TaskOf<Work extends keyof ThreadWork> = Parameters<ThreadWork[Work]>[0];
export type SettingsOf<Work extends keyof ThreadWork> = Parameters<ThreadWork[Work]>[1];
export type ResultOf<Work extends keyof ThreadWork> = Awaited<ReturnType<ThreadWork[Work]>>;

/** What a thread is started with. */
export interface ThreadStart {
  readonly work: keyof ThreadWork;
  readonly settings: unknown;
}

export type ThreadReply = { readonly result: unknown } | { readonly failure: string };
