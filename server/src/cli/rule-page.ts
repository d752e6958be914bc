/** The page of a rule, from what the rule's own file says of it. */
import { busKinds, type Rule, wrapped } from '@fieldpair/shared';
import { type Paint, painter } from './terminal.js';

type Section =
  | { readonly title: string; readonly paragraphs: readonly string[] }
  | { readonly title: string; readonly example: string }
  | { readonly title: string; readonly items: readonly string[] };

/** Of a text in Markdown; the whole of it when it has only one. */
export function firstSentence(text: string): string {
  return (/^.*?[.!?](?=\s|$)/s.exec(text)?.[0] ?? text).replace(/\s+/g, ' ').trim();
}

export function ruleMarkdown(rule: Rule): string {
  const lines = [`# ${rule.id}`, '', ...rule.explanation.what.trim().split('\n'), '', facts(rule).join('; '), ''];
  for (const section of sections(rule)) {
    lines.push(`## ${section.title}`, '');
    if ('example' in section) {
      lines.push('```pair', section.example, '```', '');
    } else if ('items' in section) {
      lines.push(...section.items.map((item) => `- ${item}`), '');
    } else {
      for (const paragraph of section.paragraphs) lines.push(paragraph, '');
    }
  }
  return lines.join('\n');
}

const pageWidth = 80;

/** The page for a terminal; Markdown's inline marks stay, because they read well there. */
export function ruleText(rule: Rule, paint: Paint = painter(false)): string {
  const lines = [paint('bold', rule.id), ...paragraphLines(rule.explanation.what)];
  lines.push(...wrapped(facts(rule).join('; '), pageWidth), '');
  for (const section of sections(rule)) {
    lines.push(paint('bold', section.title));
    if ('example' in section) {
      lines.push(...section.example.split('\n').map((line) => (line === '' ? '' : `    ${line}`)), '');
    } else if ('items' in section) {
      for (const item of section.items) {
        lines.push(...wrapped(item, pageWidth - 4).map((line, index) => (index === 0 ? `  - ${line}` : `    ${line}`)));
      }
      lines.push('');
    } else {
      for (const paragraph of section.paragraphs) lines.push(...paragraphLines(paragraph));
    }
  }
  return lines.join('\n');
}

/** Paragraphs wrapped, lines of lists and code kept as they are, a blank line at the end. */
function paragraphLines(markdown: string): string[] {
  return markdown
    .trim()
    .split(/\n\s*\n/)
    .flatMap((paragraph) => {
      const kept = /^\s*([-*]|\d+\.|\||```)/.test(paragraph);
      return [...(kept ? paragraph.split('\n') : wrapped(paragraph, pageWidth)), ''];
    });
}

function facts(rule: Rule): string[] {
  const kinds =
    rule.kinds === 'every' || rule.kinds.length === busKinds.length ? 'every kind of bus' : rule.kinds.join(', ');
  return [`Severity: ${rule.severity}`, `Speaks of: ${kinds}`, `Since: ${rule.explanation.since}`];
}

function sections(rule: Rule): Section[] {
  const { why, field, mend, bad, good, sources } = rule.explanation;
  return [
    { title: 'Why it matters', paragraphs: [why.trim()] },
    { title: 'How it shows in the field', paragraphs: [field.trim()] },
    { title: 'What to do', paragraphs: [mend.trim()] },
    { title: 'Example with this finding', example: bad.trim() },
    { title: 'Example without it', example: good.trim() },
    ...waiving(rule),
    { title: 'Sources', items: sources },
  ];
}

/** Waivers stand in a store and cover its wiring; what is wrong with a text itself is mended instead. */
function waiving({ id, scope }: Rule): Section[] {
  if (scope === 'text') return [];
  const waiver = `waive ${id} because "REASON"`;
  return [{ title: 'Where it is agreed to', paragraphs: [`Write in the store, with the reason: \`${waiver}\`.`] }];
}
