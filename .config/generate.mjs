/** Generates what follows from the grammar: Langium's modules, the reader for closed files, and the forms of statements. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { EmptyFileSystem, URI } from 'langium';
import { createLangiumGrammarServices } from 'langium/grammar';
import { generateForms } from '../language/generator/generate-forms.mjs';
import { generateReader } from '../language/generator/generate-reader.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const language = `${root}language`;
execFileSync(process.execPath, [`${root}node_modules/langium-cli/bin/langium.js`, 'generate'], {
  cwd: language,
  stdio: 'inherit',
});

const { shared } = createLangiumGrammarServices(EmptyFileSystem);
const text = readFileSync(`${language}/src/fieldpair.langium`, 'utf8');
const document = shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse('memory:/fieldpair.langium'));
await shared.workspace.DocumentBuilder.build([document]);
writeFileSync(`${language}/src/generated/reader.ts`, generateReader(document.parseResult.value));
writeFileSync(`${language}/src/generated/forms.ts`, generateForms(document.parseResult.value));
