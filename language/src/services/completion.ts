/**
 * Completion: keywords by the grammar, through Langium; names, addresses, units and words by what is in scope.
 */

import { type AstNode, AstUtils, GrammarAST, type LangiumDocument, stream } from 'langium';
import {
  type CompletionAcceptor,
  type CompletionContext,
  DefaultCompletionProvider,
  type LangiumServices,
} from 'langium/lsp';
import type { CompletionItem, CompletionList, CompletionParams } from 'vscode-languageserver';
import { type Entry, entryOf } from '../reference/index.js';
import { entryText } from '../reference/page.js';
import { type KeywordRanks, keywordRanks } from './completion-keywords.js';
import { offersFor } from './completion-offers.js';
import { completionPlace, type Due } from './completion-place.js';
import type { Desk } from './desk.js';

export class Completion extends DefaultCompletionProvider {
  readonly #desk: Desk;
  override readonly completionOptions = { triggerCharacters: ['.', ' ', '"'] };

  readonly #failed: (error: unknown) => void;
  #last: { document: LangiumDocument; version: number; offset: number; ranks: KeywordRanks } | undefined;

  constructor(services: LangiumServices, desk: Desk, failed: (error: unknown) => void) {
    super(services);
    this.#desk = desk;
    this.#failed = failed;
  }

  override async getCompletion(
    document: LangiumDocument,
    params: CompletionParams,
  ): Promise<CompletionList | undefined> {
    try {
      return await this.#complete(document, params);
    } catch (error) {
      this.#failed(error);
      return undefined;
    }
  }

  /** With what the reference says of each statement that the word can begin or go on with here. */
  protected override completionForKeyword(
    context: CompletionContext,
    keyword: GrammarAST.Keyword,
    acceptor: CompletionAcceptor,
  ): void {
    const rank = this.#ranks(context.document, context.offset)(keyword);
    if (rank === undefined || !this.filterKeyword(context, keyword)) return;
    const alike = stream(context.features)
      .map(({ feature }) => feature)
      .filter((feature) => GrammarAST.isKeyword(feature) && feature.value === keyword.value)
      .toArray();
    const entries = new Set([keyword, ...alike].flatMap((feature) => entryAt(context, feature) ?? []));
    acceptor(context, {
      label: keyword.value,
      kind: this.getKeywordCompletionItemKind(keyword),
      detail: [...entries].map(({ form }) => form).join(' · ') || 'keyword',
      ...(entries.size > 0 && {
        documentation: { kind: 'markdown', value: [...entries].map(entryText).join('\n\n---\n\n') },
      }),
      sortText: String(rank),
    });
  }

  /** Langium asks word by word; the place stays the same meanwhile. */
  #ranks(document: LangiumDocument, offset: number): KeywordRanks {
    const { version } = document.textDocument;
    const last = this.#last;
    if (last?.document !== document || last.version !== version || last.offset !== offset) {
      this.#last = { document, version, offset, ranks: keywordRanks(this.#desk, document, offset) };
    }
    return this.#last!.ranks;
  }

  async #complete(document: LangiumDocument, params: CompletionParams): Promise<CompletionList | undefined> {
    const file = document.uri.toString();
    const offset = document.textDocument.offsetAt(params.position);
    const { start, due } = completionPlace(document.textDocument.getText(), offset);
    const range = { start: document.textDocument.positionAt(start), end: params.position };
    const offers = offersFor(this.#desk, file, offset, due);
    const items = offers.map(
      ({ text, kind, detail }, index): CompletionItem => ({
        label: text,
        kind,
        ...(detail === undefined ? {} : { detail }),
        // What fits best was put first.
        sortText: `0${String(index).padStart(5, '0')}`,
        filterText: text,
        textEdit: { range, newText: text },
      }),
    );
    if (settled.has(due.what)) return { isIncomplete: false, items };
    // After a space only what the place asks for: a list at every space would be in the way of typing.
    if (params.context?.triggerCharacter !== undefined) return { isIncomplete: false, items };
    const keywords = await super.getCompletion(document, params);
    return { isIncomplete: keywords?.isIncomplete ?? false, items: [...items, ...(keywords?.items ?? [])] };
  }
}

/** Where the offers are all that can stand, so that the grammar has no word to add. */
const settled: ReadonlySet<Due['what']> = new Set(['prose', 'path', 'terminate', 'bias', 'shield']);

/** The statement of the grammar that a word is of. */
function entryAt({ node }: CompletionContext, feature: AstNode): Entry | undefined {
  const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule);
  const port = AstUtils.getContainerOfType(node, (one): one is AstNode => one.$type === 'PortDeclaration');
  return rule && entryOf(rule.name, port ? 'port' : 'cable');
}
