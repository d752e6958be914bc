import type { Rule } from '../rule.js';

export const endsRules: readonly Rule[] = [];
