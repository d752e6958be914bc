/** The language reference: all that there is to say of each statement, by where it may stand. */
import { forms } from '../generated/forms.js';
import { busTopics } from './bus-topics.js';
import { cableTopics } from './cable-topics.js';
import { deviceTopics } from './device-topics.js';
import { portTopics } from './port-topics.js';
import { landingTopic, landingTopics, runTopics } from './run-topics.js';
import { fileTopics, storeTopics } from './store-topics.js';
import type { Topic } from './topic.js';

export type { Measure, Topic, Value } from './topic.js';

export type FormName = keyof typeof forms;

/** Where statements stand. */
export const scopes = ['file', 'cable', 'device', 'port', 'store', 'bus', 'run', 'landing'] as const;
export type Scope = (typeof scopes)[number];

/** A statement with all that is said of it. */
export interface Entry {
  readonly name: FormName;
  readonly scope: Scope;
  readonly title: string;
  readonly form: string;
  readonly keywords: readonly string[];
  readonly topic: Topic;
}

const topics: Readonly<Record<Scope, Readonly<Partial<Record<FormName, Topic>>>>> = {
  file: fileTopics,
  cable: cableTopics,
  device: deviceTopics,
  port: portTopics,
  store: storeTopics,
  bus: busTopics,
  run: runTopics,
  landing: { Landing: landingTopic, ...landingTopics },
};

/** In the order of the reference. What may stand in two scopes has an entry in each. */
export const entries: readonly Entry[] = scopes.flatMap((scope) =>
  Object.entries(topics[scope]).map(([key, topic]): Entry => {
    const name = key as FormName;
    const { form, keywords } = forms[name];
    return { name, scope, title: topic.title ?? keywords[0] ?? name, form, keywords, topic };
  }),
);

/** The entry of a statement of the grammar; `scope` counts where the statement may stand in several. */
export function entryOf(name: string, scope?: Scope): Entry | undefined {
  const found = entries.filter((entry) => entry.name === name);
  return found.find((entry) => entry.scope === scope) ?? found[0];
}
