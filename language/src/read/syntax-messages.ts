/** What a syntax error says: what stands there and what could stand there, in the words of the language. */
import { AbstractParserErrorMessageProvider } from 'langium';
import { keywords } from './scanner.js';

type Messages = AbstractParserErrorMessageProvider;
type Mismatch = Parameters<Messages['buildMismatchTokenMessage']>[0];
type Redundant = Parameters<Messages['buildNotAllInputParsedMessage']>[0];
type NoAlternative = Parameters<Messages['buildNoViableAltMessage']>[0];
type TooFew = Parameters<Messages['buildEarlyExitMessage']>[0];
type Token = Mismatch['actual'];
type TokenType = Mismatch['expected'];

/** What is due where a declaration ended. */
export const endOfFile = 'the end of the file';

export const fileEndsInside = "The file ends inside a block; close it with '}'.";

/** What one of these messages says to be due. */
export const missingIn = (message: string): string | undefined => /^Here .* where (.*) is due\.$/s.exec(message)?.[1];

const terminalNames: Readonly<Record<string, string>> = {
  ID: 'a name',
  HYPHENATED: 'a word',
  STRING: 'a text in quotes',
  NUMBER: 'a number',
  FEET_AND_INCHES: 'a length',
  FRAMING: 'a character format such as 8E1',
  EOF: endOfFile,
};

const nameOf = (type: TokenType) => terminalNames[type.name] ?? `'${type.LABEL ?? type.name.replace(/:KW$/, '')}'`;
const found = (token: Token) => (token.image === '' ? 'the file ends' : `'${shortened(token.image)}' stands`);
export const shortened = (image: string) => (image.length <= 40 ? image : `${image.slice(0, 37)}...`);

/** At most six choices; a longer list helps nobody. */
function listOf(types: Iterable<TokenType>): string {
  const names = [...new Set([...types].map(nameOf))];
  const shown = names.length <= 6 ? names : [...names.slice(0, 5), 'another statement'];
  const last = shown.pop();
  return shown.length ? `${shown.join(', ')} or ${last}` : `${last}`;
}

export class SyntaxMessages extends AbstractParserErrorMessageProvider {
  override buildMismatchTokenMessage({ expected, actual }: Mismatch): string {
    if (expected.LABEL === '}' || expected.name === '}') {
      if (actual.image === '') return fileEndsInside;
      return `Here ${found(actual)}, which begins no statement; a statement begins with its keyword or a length, and '}' ends the block.`;
    }
    return `Here ${found(actual)} where ${nameOf(expected)} is due.`;
  }

  override buildNotAllInputParsedMessage({ firstRedundant }: Redundant): string {
    return `Here ${found(firstRedundant)} where ${endOfFile} is due.`;
  }

  override buildNoViableAltMessage({ expectedPathsPerAlt, actual }: NoAlternative): string {
    const firsts = expectedPathsPerAlt.flatMap((paths) => paths.flatMap((path) => path.slice(0, 1)));
    return `Here ${found(actual[0] as Token)} where ${listOf(firsts)} is due.`;
  }

  override buildEarlyExitMessage({ expectedIterationPaths, actual }: TooFew): string {
    const firsts = expectedIterationPaths.flatMap((path) => path.slice(0, 1));
    return `Here ${found(actual[0] as Token)} where ${listOf(firsts)} is due.`;
  }
}

/** A word that a keyword was meant by; `meant` are the likely ones. */
export const misspeltMessage = (written: string, meant: readonly string[]): string =>
  `Here '${shortened(written)}' stands, which means nothing here; did you mean ${meant.join(' or ')}?`;

/** A name that is only one in quotes. */
export const unquotedMessage = (written: string): string =>
  `'${shortened(written)}' ${
    keywords.has(written) ? 'is a word of the language' : 'has more than letters A to Z, digits and _'
  }; as a name it is written in quotes: "${shortened(written)}".`;

export const splitWordMessage = (word: string): string =>
  `Here '${word.replaceAll('-', ' ')}' stands; it is one word, ${word}.`;

export const commaMessage = "Here ',' stands; decimals are written with a point, such as 3.5 m.";

/** Signs of other languages, and what is written instead. */
const otherSigns: Readonly<Record<string, string>> = {
  '#': "'#' means nothing here; a comment begins with //.",
  ';': "';' means nothing here; a statement ends with its line.",
  "'": "''' means nothing here; write the unit, such as 3 ft, and texts in double quotes.",
  '=': "'=' means nothing here; a value follows its keyword after a space.",
};

/** A character that starts no token. */
export function strayTextMessage(text: string): string {
  const [sign = ''] = text;
  if (Object.hasOwn(otherSigns, sign)) return otherSigns[sign]!;
  if (text.startsWith('"')) return 'This text has no closing quote on its line; end it with ".';
  if (text.startsWith('/*')) return 'This comment has no end; close it with */.';
  return `'${shortened(text)}' means nothing here; remove it, or write names with other characters in quotes.`;
}
