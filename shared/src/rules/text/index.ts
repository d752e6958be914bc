import type { Rule } from '../rule.js';

export const textRules: readonly Rule[] = [];
