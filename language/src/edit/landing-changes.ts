/** Edits of one landing as changes of text. */
import type { Bus, Landing, NetworkEdit, Place } from '@fieldpair/shared';
import { nameText } from '../build/suggest.js';
import { removal } from './lines.js';
import { biasText, earthText, newStatement, referenceOf, resistorText, wiringText } from './phrases.js';
import { setArea } from './set-area.js';
import { insert, replace, type TextChange, type TextOf } from './text-change.js';

export type LandingEdit = Extract<NetworkEdit, { readonly landing: number }>;

export function atLanding(bus: Bus, landing: Landing, edit: LandingEdit, textOf: TextOf): TextChange[] {
  const visit = landing.visits[0];
  if (!visit) return [];
  const append = (text: string) => insert(visit.place.file, visit.place.end, ` ${text}`);
  switch (edit.kind) {
    case 'terminate': {
      const text = edit.means === 'switch' ? 'terminate switch' : resistorText(edit);
      const [first, ...others] = writtenTerminators(landing);
      const changes = [first ? replace(first, text) : append(text), ...others.map((place) => removal(place, textOf))];
      if (edit.means === 'switch' && landing.switchedOff) changes.push(removal(landing.switchedOff, textOf));
      return changes;
    }
    case 'unterminate':
      return writtenTerminators(landing).map((place) => removal(place, textOf));
    case 'set-address':
      return [
        landing.address ? replace(landing.address.place, String(edit.address)) : append(`address ${edit.address}`),
      ];
    case 'uncross':
      return landing.crossed ? [removal(landing.crossed, textOf)] : [];
    case 'set-port':
      return landing.visits.map(({ referencePlace }) =>
        replace(referencePlace, `${nameText(landing.node?.name ?? landing.name)}.${nameText(edit.port)}`),
      );
    case 'set-shield':
      if (!landing.shieldPlace) return [append(`shield ${edit.treatment}`)];
      return [
        edit.treatment === 'through'
          ? removal(landing.shieldPlace, textOf)
          : replace(landing.shieldPlace, `shield ${edit.treatment}`),
      ];
    case 'wire-contact': {
      const text = wiringText(edit.wiring);
      return [landing.wiring ? replace(landing.wiring.place, text) : append(text)];
    }
    case 'set-area':
      return setArea(bus, landing, edit.area, textOf);
    case 'earth-shield':
      return earthed(bus, landing, earthText(landing, edit.through), textOf);
    case 'add-bias':
      return [newStatement(bus, biasText(referenceOf(landing), edit.up, edit.down), textOf)];
  }
}

/** In place of the first earth that is written at the landing, else as a statement of its own. */
function earthed(bus: Bus, landing: Landing, text: string, textOf: TextOf): TextChange[] {
  const written = bus.earths.find((earth) => earth.landing === landing.index);
  return [written ? replace(written.place, text) : newStatement(bus, text, textOf)];
}

/** Where a landing is said to be terminated, a switch that is not there included. */
const writtenTerminators = ({ terminations, missingSwitch }: Landing): Place[] => [
  ...terminations.flatMap(({ place }) => place ?? []),
  ...(missingSwitch ? [missingSwitch] : []),
];
