/** What can be chosen: the bus, the view, who drives, what-if, what to compare with, and the landings to draw. */
import type { WaveChoices, WavesPage } from '../../../../../server/src/protocol.js';
import { make } from '../../page/make.js';
import { labelled, linePiece, setOptions } from './dom.js';

export interface Controls {
  readonly element: HTMLElement;
  /** The landings to draw; they stand below the plot. */
  readonly landings: HTMLElement;
  show(page: WavesPage, choices: WaveChoices): void;
  /** Has a part of the time drawn; all of it when undefined. */
  look(span: WaveChoices['span'] | undefined): void;
}

/** Another one of these has other times. */
const timely: ReadonlySet<string> = new Set<keyof WaveChoices>(['view', 'rate', 'edge', 'bits', 'driver']);

const views = [
  { view: 'pattern', text: 'Bits' },
  { view: 'step', text: 'One edge' },
  { view: 'eye', text: 'Eye' },
] as const;

/** Stands for a fault that is not in the list. */
const inWords = '...';

/** A fault with a place and a value of its own, on the first run of the bus. */
function exampleOf({ faults }: WavesPage): string {
  const short = faults.flatMap(({ phrases }) => phrases).find((phrase) => phrase.startsWith('short '));
  return short === undefined ? 'crossed at a landing' : `${short.replace('1 ohm', '5 ohm')} at 40 %`;
}

/** @param choose is told what is chosen from now on */
export function controls(choose: (choices: WaveChoices) => void): Controls {
  let page: WavesPage | undefined;
  let choices: WaveChoices = { view: 'pattern' };
  const change = (changed: Partial<Record<keyof WaveChoices, unknown>>) => {
    const anew = Object.keys(changed).some((key) => timely.has(key)) ? { span: undefined } : {};
    const merged = { ...choices, ...anew, ...changed } as Record<string, unknown>;
    // What is back at its usual value is not a choice any more.
    choices = Object.fromEntries(
      Object.entries(merged).filter(([, value]) => value !== undefined),
    ) as unknown as WaveChoices;
    choose(choices);
  };
  const written = (text: string) => (text.trim() === '' ? undefined : text.trim());

  const bus = make('select', {
    onchange: () => {
      const [store, name] = JSON.parse(bus.value) as [string, string];
      choose({ view: choices.view, store, bus: name });
    },
  });
  const radios = views.map(({ view, text }) => {
    const radio = make('input', { type: 'radio', name: 'view', value: view, onchange: () => change({ view }) });
    return { radio, label: make('label', { className: 'view' }, radio, make('span', {}, text)) };
  });
  const viewGroup = make(
    'fieldset',
    { className: 'views' },
    make('legend', { className: 'unseen' }, 'What is drawn'),
    ...radios.map(({ label }) => label),
  );
  const driver = make('select', { onchange: () => change({ driver: driver.value }) });
  const rate = make('input', {
    type: 'text',
    size: 11,
    spellcheck: false,
    onchange: () => change({ rate: written(rate.value) }),
  });
  const edge = make('input', {
    type: 'text',
    size: 11,
    spellcheck: false,
    onchange: () => change({ edge: written(edge.value) }),
  });
  const bits = make('input', {
    type: 'text',
    size: 18,
    spellcheck: false,
    placeholder: 'usual pattern',
    onchange: () => change({ bits: written(bits.value) }),
  });
  const fix = make('select', { onchange: () => change({ fix: written(fix.value) }) });
  const addFault = (phrase: string | undefined) => {
    if (phrase !== undefined) change({ faults: [...new Set([...(choices.faults ?? []), phrase])] });
  };
  const fault = make('select', {
    onchange: () => {
      faultWords.hidden = fault.value !== inWords;
      if (fault.value === inWords) faultText.focus();
      else addFault(written(fault.value));
    },
  });
  const faultText = make('input', {
    type: 'text',
    size: 34,
    spellcheck: false,
    onchange: () => {
      addFault(written(faultText.value));
      faultText.value = '';
    },
  });
  const faultWords = labelled('The fault in words', faultText);
  faultWords.hidden = true;
  const faultList = make('ul', { className: 'faults' });
  faultList.setAttribute('aria-label', 'Faults that are assumed');
  const landings = make('fieldset', { className: 'landings' });

  const element = make(
    'form',
    { className: 'controls', onsubmit: (event: Event) => event.preventDefault() },
    labelled('Bus', bus),
    viewGroup,
    labelled('Driver', driver),
    labelled('Rate', rate),
    labelled('Edge', edge),
    labelled('Bits', bits),
    labelled('Compare with', fix),
    labelled('What if', fault),
    faultWords,
    faultList,
  );

  const showText = (input: HTMLInputElement, value: string | undefined, usual: string) => {
    input.placeholder = usual;
    // Nobody's typing is overwritten.
    if (document.activeElement !== input) input.value = value ?? '';
  };
  const showFaults = (faults: readonly string[]) => {
    faultList.hidden = faults.length === 0;
    faultList.replaceChildren(
      ...faults.map((phrase) => {
        const remove = make(
          'button',
          {
            type: 'button',
            title: 'Take this fault away',
            onclick: () => {
              change({ faults: faults.length > 1 ? faults.filter((one) => one !== phrase) : undefined });
              fault.focus();
            },
          },
          '\u00d7',
        );
        remove.setAttribute('aria-label', `Take away: ${phrase}`);
        return make('li', {}, phrase, remove);
      }),
    );
  };
  const showLandings = (lines: WavesPage['landings']) => {
    const focused = landings.querySelector<HTMLInputElement>('input:focus')?.value;
    const boxes = lines.map(({ name, shown, className, dashes }) => {
      const box = make('input', {
        type: 'checkbox',
        checked: shown,
        value: name,
        onchange: () => {
          const drawn = [...landings.querySelectorAll<HTMLInputElement>('input:checked')].map(({ value }) => value);
          change({ landings: drawn.length ? drawn : undefined });
        },
      });
      return make('label', {}, box, linePiece(className, dashes), make('span', {}, name));
    });
    const usual = make(
      'button',
      {
        type: 'button',
        className: 'link',
        hidden: choices.landings === undefined,
        onclick: () => change({ landings: undefined }),
      },
      'the usual ones',
    );
    landings.replaceChildren(make('legend', {}, 'Landings to draw'), ...boxes, usual);
    if (focused !== undefined) landings.querySelector<HTMLInputElement>(`input[value=${CSS.escape(focused)}]`)?.focus();
  };

  return {
    element,
    landings,
    look: (span) => change({ span }),
    show(shown, chosen) {
      page = shown;
      choices = { ...chosen, store: page.store, bus: page.bus };
      setOptions(
        bus,
        page.buses.map((one) => ({
          value: JSON.stringify([one.store, one.bus]),
          text: page?.buses.some(({ store }) => store !== one.store) ? `${one.store}: ${one.bus}` : one.bus,
        })),
        JSON.stringify([page.store, page.bus]),
      );
      for (const { radio } of radios) radio.checked = radio.value === choices.view;
      setOptions(
        driver,
        page.drivers.map((name) => ({ value: name, text: name })),
        page.driver,
      );
      showText(rate, choices.rate, page.rate);
      showText(edge, choices.edge, page.edge);
      showText(bits, choices.bits, choices.view === 'eye' ? 'all groups of 7 bits' : 'usual pattern');
      setOptions(
        fix,
        [
          { value: '', text: page.fixes.length ? 'nothing' : 'nothing: no fix would change it' },
          ...page.fixes.map(({ id, title }) => ({ value: id, text: title })),
        ],
        page.fixes.some(({ id }) => id === choices.fix) ? (choices.fix ?? '') : '',
      );
      setFaultOptions(fault, page.faults);
      if (!faultWords.hidden) fault.value = inWords;
      faultText.placeholder = exampleOf(page);
      showFaults(choices.faults ?? []);
      showLandings(page.landings);
    },
  };
}

function setFaultOptions(list: HTMLSelectElement, groups: WavesPage['faults']): void {
  const wanted = JSON.stringify(groups);
  if (list.dataset.options !== wanted) {
    list.dataset.options = wanted;
    list.replaceChildren(
      make('option', { value: '' }, 'add a fault\u2026'),
      make('option', { value: inWords }, 'another, in words\u2026'),
      ...groups.map(({ group, phrases }) =>
        make('optgroup', { label: group }, ...phrases.map((phrase) => make('option', { value: phrase }, phrase))),
      ),
    );
  }
  list.value = '';
}
