/** What was fixed, for programs, by the schema `fieldpair-fix-1`. */
import { createTwoFilesPatch } from 'diff';
import type { FixReport } from '../report/fix-report.js';

export function fixJson({ changed, applied, left }: FixReport): string {
  const value = {
    schema: 'fieldpair-fix-1',
    files: changed.map(({ file, before, after }) => ({
      file,
      fixes: applied.filter((one) => one.file === file).length,
      patch: createTwoFilesPatch(file, file, before, after),
    })),
    applied,
    left: left.map(({ choices, ...finding }) => ({ ...finding, fixes: choices })),
  };
  return `${JSON.stringify(value, undefined, 2)}\n`;
}
