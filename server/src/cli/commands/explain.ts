/** `fieldpair explain`: the list of rules, or the page of one. */
import { nearest } from '@fieldpair/language';
import { type Rule, ruleById, ruleIds, rules } from '@fieldpair/shared';
import { type Command, Option } from 'commander';
import { CommandFailure, exitStatus } from '../failure.js';
import { firstSentence, ruleMarkdown, ruleText } from '../rule-page.js';
import { painter, type Terminal } from '../terminal.js';

interface ExplainOptions {
  readonly format: 'text' | 'markdown';
}

export function addExplain(program: Command, terminal: Terminal, finish: (status: number) => void): void {
  program
    .command('explain')
    .summary('say why a rule matters and what to do, or list the rules')
    .description(
      'Prints the page of a rule: what it looks for, why it matters, what to do, with its sources.\nWithout a rule, lists them all.',
    )
    .argument('[rule]', 'the name of a rule')
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'markdown']).default('text'))
    .action((id: string | undefined, options: ExplainOptions) => {
      terminal.out(id === undefined ? list(options, terminal) : page(id, options, terminal));
      finish(exitStatus.nothingFound);
    });
}

function page(id: string, { format }: ExplainOptions, terminal: Terminal): string {
  const rule = ruleById(id);
  if (!rule) {
    const meant = nearest(id, ruleIds);
    const hint = meant.length ? `did you mean ${meant.join(' or ')}?` : 'fieldpair explain lists them';
    throw new CommandFailure(`no rule is named ${id}; ${hint}`);
  }
  return format === 'markdown' ? ruleMarkdown(rule) : ruleText(rule, painter(terminal.colour));
}

function list({ format }: ExplainOptions, terminal: Terminal): string {
  const what = (rule: Rule) => firstSentence(rule.explanation.what);
  if (format === 'markdown') {
    const cell = (text: string) => text.replaceAll('|', '\\|');
    const rows = rules.map((rule) => `| ${rule.id} | ${rule.severity} | ${cell(what(rule))} |`);
    return `${['| rule | severity | what it looks for |', '| --- | --- | --- |', ...rows].join('\n')}\n`;
  }
  const paint = painter(terminal.colour);
  const longest = Math.max(0, ...rules.map((rule) => rule.id.length));
  const rows = rules.map(
    (rule) => `${paint('bold', rule.id.padEnd(longest))}  ${rule.severity.padEnd(7)}  ${what(rule)}`,
  );
  return `${rows.join('\n')}\n`;
}
