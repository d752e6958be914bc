/** The one place where text of a user's file is made harmless for XML, SVG and HTML. */

/** Characters that no XML 1.0 document may hold (W3C, Extensible Markup Language 1.0, 5th edition, section 2.2). */
const outsideXml = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A text as the content of an element or of a quoted attribute; what XML has no place for becomes `\uFFFD`. */
export const escaped = (text: string): string =>
  text.replace(outsideXml, '\uFFFD').replace(/[&<>"']/g, (character) => entities[character]!);
