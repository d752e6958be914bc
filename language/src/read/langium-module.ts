/** The one list of what the language adds to Langium's core; the editor services extend it in services/. */
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultValueConverter,
  EmptyFileSystem,
  type GrammarAST,
  inject,
  type LangiumCoreServices,
  type LangiumSharedCoreServices,
  type Module,
  type PartialLangiumCoreServices,
  type ValueType,
} from 'langium';
import { FieldpairGeneratedModule, FieldpairGeneratedSharedModule } from '../generated/langium/module.js';
import { SyntaxMessages } from './syntax-messages.js';
import { unquote } from './text-value.js';

class ValueConverter extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string): ValueType {
    if (rule.name === 'STRING') return unquote(input);
    return rule.name === 'NUMBER' ? Number(input) : input;
  }
}

export const FieldpairModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
  parser: {
    ValueConverter: () => new ValueConverter(),
    ParserErrorMessageProvider: () => new SyntaxMessages(),
  },
};

/** Langium's services for reading text alone, without an editor. */
export function createReadingServices(): LangiumCoreServices {
  const shared: LangiumSharedCoreServices = inject(
    createDefaultSharedCoreModule(EmptyFileSystem),
    FieldpairGeneratedSharedModule,
  );
  const services = inject(createDefaultCoreModule({ shared }), FieldpairGeneratedModule, FieldpairModule);
  shared.ServiceRegistry.register(services);
  return services;
}
