/** What the page of the packet and its panel say to each other; the page has nothing to say. */
export type ToPacketPage =
  /** A document that loads and runs nothing. */
  | { readonly html: string }
  /** There is nothing to show, and why. */
  | { readonly nothing: string };

export type FromPacketPage = never;
