import type { Rule } from '../rule.js';

export const shapeRules: readonly Rule[] = [];
