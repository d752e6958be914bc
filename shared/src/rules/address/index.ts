import type { Rule } from '../rule.js';

export const addressRules: readonly Rule[] = [];
