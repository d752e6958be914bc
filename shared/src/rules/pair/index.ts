import type { Rule } from '../rule.js';

export const pairRules: readonly Rule[] = [];
