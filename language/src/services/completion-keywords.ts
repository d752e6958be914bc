/** Which of the words that the grammar has for a place mean something there, and which of them are likelier. */
import { type BusKind, type Landing, rs485Kinds } from '@fieldpair/shared';
import { AstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { landingBefore } from './completion-values.js';
import type { Desk } from './desk.js';

/** Where a word goes in the list, low numbers first; undefined where it is not offered. */
export type KeywordRanks = (keyword: GrammarAST.Keyword) => number | undefined;

/** By rules of the grammar. */
const ofLandingOrRun: ReadonlySet<string> = new Set([
  ...['LandingAddress', 'Terminate', 'SwitchOff', 'Crossed', 'LandingShield', 'LandingRevision', 'Breaks', 'Across'],
  ...['OnCable', 'Built', 'Cords', 'Spare', 'BesideMains', 'Fuse'],
]);
const ofBus: ReadonlySet<string> = new Set([
  ...['From', 'Run', 'Area', 'BusShield', 'BusBias', 'Ambient', 'SamplePoint', 'Guide', 'BusColours', 'Waiver'],
]);

const isCan = (kind: BusKind) => kind === 'can';
const isLoop = (kind: BusKind) => kind === 'contact-loop';
const hasEnds = (kind: BusKind) => kind !== 'ethernet' && kind !== 'supply';

/** Statements that mean nothing on other kinds of bus. */
const suits: Readonly<Partial<Record<string, (kind: BusKind) => boolean>>> = {
  SamplePoint: isCan,
  Guide: isCan,
  Breaks: isLoop,
  Across: isLoop,
  Cords: (kind) => kind === 'ethernet',
  Fuse: (kind) => kind === 'supply',
  BusBias: (kind) => rs485Kinds.has(kind),
  Terminate: hasEnds,
  SwitchOff: (kind) => hasEnds(kind) && !isLoop(kind),
  LandingAddress: (kind) => hasEnds(kind) && !isLoop(kind),
};

/** What is said of a landing once. */
const isSaid: Readonly<Partial<Record<string, (landing: Landing) => boolean>>> = {
  LandingAddress: ({ address }) => address !== undefined,
  Terminate: ({ terminations, switchRequested }) => !!switchRequested || terminations.some(({ place }) => place),
  SwitchOff: ({ switchedOff, switchRequested }) => !!(switchedOff ?? switchRequested),
  Crossed: ({ crossed }) => !!crossed,
  LandingRevision: ({ node }) => !!node?.revisionPlace,
  Breaks: ({ wiring }) => !!wiring,
  Across: ({ wiring }) => !!wiring,
};

export function keywordRanks(desk: Desk, { uri, textDocument }: LangiumDocument, offset: number): KeywordRanks {
  const inside = desk.busAt(uri.toString(), offset);
  const landing = inside && landingBefore(inside.bus, offset);
  const kind = inside?.bus.kind;
  const beginsLine = /[\n{][ \t]*[\w-]*$/.test(textDocument.getText().slice(Math.max(0, offset - 300), offset));
  return (keyword) => {
    const rule = AstUtils.getContainerOfType(keyword, GrammarAST.isParserRule)?.name ?? '';
    // `in` among the units, which are offered by what they measure.
    if (rule === 'Unit') return undefined;
    if (kind && suits[rule]?.(kind) === false) return undefined;
    if (landing && isSaid[rule]?.(landing)) return undefined;
    // A new line mostly begins a statement, and the rest of a line goes on with its own.
    if (beginsLine) return ofLandingOrRun.has(rule) ? 2 : 1;
    return ofBus.has(rule) && keyword.value !== 'to' ? 2 : 1;
  };
}
