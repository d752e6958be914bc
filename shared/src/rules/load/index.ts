import type { Rule } from '../rule.js';

export const loadRules: readonly Rule[] = [];
