/** The page's side of a panel: messages both ways, and what is kept over a reload. */
import type { FromAnyPage, ToAnyPage } from '../messages.js';

/** What the webview gives to its page, once. */
interface Host {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}
declare function acquireVsCodeApi(): Host;

/** The extension, as its page sees it. `Kept` is what the page wants back when it is shown anew. */
export interface Extension<FromPage, Kept> {
  post(message: FromPage): void;
  /** What was kept for the text that is shown; undefined when nothing was. */
  kept(): Kept | undefined;
  keep(kept: Kept): void;
}

/**
 * Connects the page with its panel. Call it once, when the page is ready to be told what to show.
 *
 * @param take gets each message from the panel
 * @param followed is told that another text is shown from now on
 */
export function connect<ToPage, FromPage, Kept>(
  take: (message: ToPage) => void,
  followed: () => void,
): Extension<FromPage, Kept> {
  const host = acquireVsCodeApi();
  let state = (host.getState() ?? {}) as { source?: string; kept?: Kept };
  window.addEventListener('message', ({ data }: MessageEvent<ToAnyPage<ToPage>>) => {
    if ('own' in data) {
      take(data.own);
    } else if (data.source !== state.source) {
      const isOther = state.source !== undefined;
      state = { source: data.source };
      host.setState(state);
      if (isOther) followed();
    }
  });
  host.postMessage({ ready: true } satisfies FromAnyPage<FromPage>);
  return {
    post: (own) => host.postMessage({ own } satisfies FromAnyPage<FromPage>),
    kept: () => state.kept,
    keep: (kept) => {
      state = { ...state, kept };
      host.setState(state);
    },
  };
}
