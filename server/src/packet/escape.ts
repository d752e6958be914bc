/** Text taken literally in the text and in the quoted attributes of HTML, SVG and other XML. */
const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => entities[character]!);
