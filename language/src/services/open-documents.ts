/**
 * Open texts as Langium's documents, parsed when the syntax tree is first asked for: most answers need none, and a
 * keystroke makes a new document.
 */
import {
  DefaultLangiumDocuments,
  DocumentState,
  type LangiumDocument,
  type Mutable,
  type ParseResult,
  TextDocument,
  type URI,
} from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';

export class OpenDocuments extends DefaultLangiumDocuments {
  readonly #services: LangiumSharedServices;
  readonly #known = new WeakMap<TextDocument, { readonly version: number; readonly document: LangiumDocument }>();

  constructor(services: LangiumSharedServices) {
    super(services);
    this.#services = services;
  }

  override getOrCreateDocument(uri: URI): Promise<LangiumDocument> {
    const text =
      this.#services.workspace.TextDocuments.get(uri.toString()) ??
      TextDocument.create(uri.toString(), 'fieldpair', 0, '');
    const known = this.#known.get(text);
    if (known?.version === text.version) return Promise.resolve(known.document);
    const document = this.#documentOf(uri, text);
    this.#known.set(text, { version: text.version, document });
    return Promise.resolve(document);
  }

  #documentOf(uri: URI, textDocument: TextDocument): LangiumDocument {
    const { ServiceRegistry } = this.#services;
    let result: ParseResult | undefined;
    return {
      uri,
      textDocument,
      state: DocumentState.Parsed,
      references: [],
      get parseResult(): ParseResult {
        if (!result) {
          result = ServiceRegistry.getServices(uri).parser.LangiumParser.parse(textDocument.getText());
          (result.value as Mutable<typeof result.value>).$document = this as LangiumDocument;
        }
        return result;
      },
    };
  }
}
