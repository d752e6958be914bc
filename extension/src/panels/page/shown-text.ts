/**
 * A text as a page shows it: what would turn the direction of writing or move the cursor becomes a sign, so that a name
 * cannot look like another one.
 */
export const shownText = (text: string): string =>
  text.replace(/(?![\n\t])[\p{Cc}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '\uFFFD');
