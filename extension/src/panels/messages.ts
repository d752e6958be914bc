/** The envelope of all messages between a panel and its page; what is inside belongs to the kind of panel. */

export type FromAnyPage<Own> =
  /** The script runs and has nothing to show yet. */
  { readonly ready: true } | { readonly own: Own };

export type ToAnyPage<Own> =
  /** The URI of the text that is followed from now on; the page keeps it for after a reload. */
  { readonly source: string } | { readonly own: Own };
