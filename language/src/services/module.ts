/**
 * The services of an editor as Langium's module. Names are resolved when networks are built, so Langium links,
 * scopes and indexes nothing here; it parses only what completion and folding ask for (open-documents.ts).
 */
import {
  DefaultConfigurationProvider,
  DefaultDocumentBuilder,
  DefaultWorkspaceManager,
  EmptyFileSystem,
  inject,
  type LangiumDocument,
  type Module,
} from 'langium';
import {
  createDefaultModule,
  createDefaultSharedModule,
  type LangiumServices,
  type LangiumSharedServices,
  type PartialLangiumServices,
  type PartialLangiumSharedServices,
} from 'langium/lsp';
import { type Connection, ResponseError, type TextEdit } from 'vscode-languageserver';
import { FieldpairGeneratedModule, FieldpairGeneratedSharedModule } from '../generated/langium/module.js';
import { FieldpairModule } from '../read/langium-module.js';
import { codeActions } from './code-actions.js';
import { codeLenses } from './code-lens.js';
import { Completion } from './completion.js';
import type { Desk } from './desk.js';
import { Folding } from './folding.js';
import { formatting, rangeFormatting } from './formatting.js';
import { hover } from './hover.js';
import { inlayHints } from './inlay-hints.js';
import { links } from './links.js';
import { definition, highlights, references } from './names.js';
import { OpenDocuments } from './open-documents.js';
import { prepareRename, rename } from './rename.js';
import { colourModifiers, colourTypes, semanticColours } from './semantic-colours.js';
import { symbols } from './symbols.js';

/** The workspace's files are the project's business. */
class NoWorkspace extends DefaultWorkspaceManager {
  override initialize(): void {
    this.folders = [];
  }
}

/** Documents are parsed when asked for, so there is nothing to wait for. */
class NothingToBuild extends DefaultDocumentBuilder {
  override waitUntil(): Promise<never> {
    return Promise.resolve(undefined as never);
  }
}

/** The program asks for the settings and says so; Langium's own provider would ask a second time. */
class SettingsElsewhere extends DefaultConfigurationProvider {
  override initialized(): Promise<void> {
    return Promise.resolve();
  }
}

/** What the program around the services decides. */
export interface EditorHost {
  readonly connection: Connection;
  readonly desk: Desk;
  /** Told of failures inside a service; the editor gets an empty answer instead. */
  readonly failed: (error: unknown) => void;
  /** Services of the program itself, such as what happens when a text changes. */
  readonly module: Module<LangiumSharedServices, PartialLangiumSharedServices>;
}

const sharedModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
  lsp: {
    // Langium's own would look in an index that is empty here.
    WorkspaceSymbolProvider: () => undefined,
  },
  workspace: {
    WorkspaceManager: (services) => new NoWorkspace(services),
    DocumentBuilder: (services) => new NothingToBuild(services),
    ConfigurationProvider: (services) => new SettingsElsewhere(services),
    LangiumDocuments: (services) => new OpenDocuments(services),
  },
};

/** Every service that the editor may ask, each on its own file and none of them throwing. */
export function createEditorServices({ connection, desk, failed, module }: EditorHost): LangiumSharedServices {
  const shared = inject(
    createDefaultSharedModule({ connection, ...EmptyFileSystem }),
    FieldpairGeneratedSharedModule,
    sharedModule,
    module,
  );
  const services = inject(
    createDefaultModule({ shared }),
    FieldpairGeneratedModule,
    FieldpairModule as Module<LangiumServices, PartialLangiumServices>,
    editorModule(desk, failed),
  );
  shared.ServiceRegistry.register(services);
  return shared;
}

function editorModule(desk: Desk, failed: (error: unknown) => void): Module<LangiumServices, PartialLangiumServices> {
  const answer = <Result>(document: LangiumDocument, ask: (file: string) => Result): Result | undefined => {
    try {
      return ask(document.uri.toString());
    } catch (error) {
      // What is said to the reader on purpose reaches the reader.
      if (error instanceof ResponseError) throw error;
      failed(error);
      return undefined;
    }
  };
  const edits = (document: LangiumDocument, ask: (file: string) => TextEdit[]) => answer(document, ask) ?? [];
  return {
    lsp: {
      CodeActionProvider: () => ({
        getCodeActions: (document, { range, context }) =>
          answer(document, (file) => codeActions(desk, file, range, context)),
      }),
      CodeLensProvider: () => ({ provideCodeLens: (document) => answer(document, (file) => codeLenses(desk, file)) }),
      CompletionProvider: (services) => new Completion(services, desk, failed),
      DefinitionProvider: () => ({
        getDefinition: (document, { position }) =>
          answer(document, (file) => {
            const found = definition(desk, file, position);
            return found && [{ targetUri: found.uri, targetRange: found.range, targetSelectionRange: found.range }];
          }),
      }),
      DocumentHighlightProvider: () => ({
        getDocumentHighlight: (document, { position }) => answer(document, (file) => highlights(desk, file, position)),
      }),
      DocumentLinkProvider: () => ({
        getDocumentLinks: (document) => answer(document, (file) => links(desk, file)) ?? [],
      }),
      DocumentSymbolProvider: () => ({
        getSymbols: (document) => answer(document, (file) => symbols(desk, file)) ?? [],
      }),
      FoldingRangeProvider: (services) => new Folding(services, desk),
      Formatter: () => ({
        formatDocument: (document) => edits(document, (file) => formatting(desk, file)),
        formatDocumentRange: (document, { range }) => edits(document, (file) => rangeFormatting(desk, file, range)),
        formatDocumentOnType: () => [],
        formatOnTypeOptions: undefined,
      }),
      HoverProvider: () => ({
        getHoverContent: (document, { position }) => answer(document, (file) => hover(desk, file, position)),
      }),
      InlayHintProvider: () => ({
        getInlayHints: (document, { range }) => answer(document, (file) => inlayHints(desk, file, range)),
      }),
      ReferencesProvider: () => ({
        findReferences: (document, { position, context }) =>
          answer(document, (file) => references(desk, file, position, context.includeDeclaration)) ?? [],
      }),
      SemanticTokenProvider: () => {
        const colours = (document: LangiumDocument) =>
          answer(document, (file) => semanticColours(desk, file)) ?? { data: [] };
        const legend = { tokenTypes: Object.keys(colourTypes), tokenModifiers: Object.keys(colourModifiers) };
        return {
          tokenTypes: { ...colourTypes },
          tokenModifiers: { ...colourModifiers },
          semanticTokensOptions: { legend, full: true, range: false },
          semanticHighlight: colours,
          semanticHighlightRange: colours,
          semanticHighlightDelta: colours,
        };
      },
      RenameProvider: () => ({
        prepareRename: (document, { position }) => answer(document, (file) => prepareRename(desk, file, position)),
        rename: (document, { position, newName }) => answer(document, (file) => rename(desk, file, position, newName)),
      }),
    },
  };
}
