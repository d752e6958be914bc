/** Every rule, by area; the order is that of the list that people read. */
import { addressRules } from './address/index.js';
import { endsRules } from './ends/index.js';
import { linkRules } from './links/index.js';
import { loadRules } from './load/index.js';
import { loopRules } from './loop/index.js';
import { pairRules } from './pair/index.js';
import type { Rule } from './rule.js';
import { shapeRules } from './shape/index.js';
import { supplyRules } from './supply/index.js';
import { textRules } from './text/index.js';

export const rules: readonly Rule[] = [
  ...shapeRules,
  ...endsRules,
  ...pairRules,
  ...loadRules,
  ...linkRules,
  ...loopRules,
  ...supplyRules,
  ...addressRules,
  ...textRules,
];

const byId = new Map(rules.map((rule) => [rule.id, rule]));

export const ruleById = (id: string): Rule | undefined => byId.get(id);

/** The ids that may be waived, set and asked for. */
export const ruleIds: ReadonlySet<string> = new Set(byId.keys());
