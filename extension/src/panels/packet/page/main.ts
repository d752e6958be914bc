/** The page of the packet: the document that the server made, patched sheet by sheet when it is made anew. */
import { connect } from '../../page/connect.js';
import { make } from '../../page/make.js';
import type { FromPacketPage, ToPacketPage } from '../messages.js';
import './packet.css';

/** The page's policy lets styles in that carry the nonce of its script. */
const nonce = document.currentScript?.nonce ?? '';
const style = make('style');
style.nonce = nonce;
document.head.append(style);
const nothing = make('p', { className: 'nothing', hidden: true });
document.body.append(nothing);

/** The markup of the parts that are shown, in their order: sheets by their ids, the rest by their tags. */
let shown: { readonly key: string; readonly markup: string; readonly element: Element }[] = [];
let main: HTMLElement | undefined;

function show(html: string): void {
  // A parsed document has the policy of this page, which refuses styles in its markup; they are set by hand instead.
  // In texts and attributes the quotation mark is escaped, so that this meets markup alone.
  const [before = '', css = '', behind = ''] = html.split(/<style>|<\/style>/);
  const plain = `${before}${behind}`.replaceAll(' style="', ' data-style="');
  const made = new DOMParser().parseFromString(plain, 'text/html');
  if (style.textContent !== css) style.textContent = css;
  nothing.hidden = true;
  const known = new Map(shown.map((part) => [part.key, part]));
  const fresh = [...made.querySelectorAll('body > nav, main > section, body > footer')].map((element) => {
    const key = element.id || element.localName;
    const markup = element.outerHTML;
    const same = known.get(key);
    return same?.markup === markup ? same : { key, markup, element: adopted(element) };
  });
  if (!main) {
    main = make('main');
    document.body.append(main);
  }
  for (const { key, element } of shown) {
    if (!fresh.some((part) => part.element === element)) known.get(key)?.element.remove();
  }
  const sheets = fresh.filter(({ element }) => element.localName === 'section').map(({ element }) => element);
  for (const [index, sheet] of sheets.entries()) {
    if (main.children[index] !== sheet) main.insertBefore(sheet, main.children[index] ?? null);
  }
  for (const { element } of fresh) {
    if (element.localName === 'nav' && main.previousElementSibling !== element) main.before(element);
    if (element.localName === 'footer' && main.nextElementSibling !== element) main.after(element);
  }
  shown = fresh;
}

/** An element of the made document for this one, with the styles of its parts. */
function adopted(element: Element): Element {
  document.adoptNode(element);
  for (const one of element.querySelectorAll<HTMLElement>('[data-style]')) {
    one.style.cssText = one.dataset['style'] ?? '';
  }
  return element;
}

function clear(reason: string): void {
  for (const { element } of shown) element.remove();
  shown = [];
  style.textContent = '';
  nothing.textContent = reason;
  nothing.hidden = false;
}

connect<ToPacketPage, FromPacketPage, never>(
  (message) => ('html' in message ? show(message.html) : clear(message.nothing)),
  () => window.scrollTo(0, 0),
);
