/** What is said of a landing behind its name: address, terminator, shield and the like. */
import type { Fix, Place } from '@fieldpair/shared';
import type { LandingAddress, LandingProperty } from '../generated/reader.js';
import { added } from '../short-list.js';
import type { LandingDraft } from './landing-draft.js';
import type { Notes } from './notes.js';
import { terminationOf } from './port.js';
import { repeatedFixes, type Said } from './repeated.js';
import { wiringOf } from './two-wire.js';

/** Takes a property into its landing; false where its value is not understood. */
export function readProperty(property: LandingProperty, draft: LandingDraft, bus: string, notes: Notes): boolean {
  if (property.type === 'LandingAddress') {
    readAddress(property, draft, bus, notes);
    return true;
  }
  const place = notes.place(property);
  switch (property.type) {
    case 'Terminate': {
      if (property.switched) {
        if (isRepeated(draft, draft.switchRequested, place, bus, notes)) break;
        draft.switchRequested = place;
        if (draft.port?.terminator?.mode === 'switch') {
          const { mode: _, ...values } = draft.port.terminator;
          draft.terminations = added(draft.terminations, { means: 'switch', ...values, place });
        } else if (draft.port || draft.splice !== undefined) draft.missingSwitch = place;
      } else {
        const values = terminationOf(property.resistance, property.capacitance, notes);
        if (values) draft.terminations = added(draft.terminations, { means: 'resistor', ...values, place });
        else {
          draft.terminatorUnclear = true;
          return false;
        }
      }
      break;
    }
    case 'SwitchOff':
      if (!isRepeated(draft, draft.switchedOff, place, bus, notes)) draft.switchedOff = place;
      break;
    case 'Crossed':
      if (!isRepeated(draft, draft.crossed, place, bus, notes)) draft.crossed = place;
      break;
    case 'LandingShield':
      if (property.treatment && !isRepeated(draft, draft.shieldPlace, place, bus, notes)) {
        draft.shield = property.treatment;
        draft.shieldPlace = place;
      }
      break;
    case 'LandingRevision':
      break; // Collected with the nodes.
    case 'Breaks':
    case 'Across': {
      const wiring = wiringOf(property, notes);
      if (!wiring) break;
      if (draft.wiring) {
        notes.report(
          'statement-repeated',
          `the contact at ${draft.name} is wired in two ways; keep the one that is true: ${notes.textAt(draft.wiring.place)}, or ${notes.textAt(property)}`,
          place,
          {
            bus,
            at: draft.name,
            related: [{ message: 'the other is said here', place: draft.wiring.place }],
          },
        );
      } else draft.wiring = wiring;
      break;
    }
  }
  return true;
}

function readAddress(property: LandingAddress, draft: LandingDraft, bus: string, notes: Notes): void {
  const written = property.address;
  if (written?.value === undefined) return;
  if (draft.splice !== undefined) {
    const place = notes.place(property);
    const remove: Fix = {
      title: `Remove the address of ${draft.name}`,
      safe: false,
      edits: [{ kind: 'write', place, text: '' }],
    };
    const message = `address speaks of devices and ${draft.name} is a splice; remove it`;
    notes.report('statement-foreign', message, place, {
      bus,
      at: draft.name,
      unnecessary: true,
      fixes: () => [remove],
    });
    return;
  }
  const value = written.negative ? -written.value : written.value;
  const address = { value, place: notes.between(written.start, written.end) };
  if (!draft.address) draft.address = address;
  else if (draft.address.value !== value) {
    const first = draft.address;
    draft.otherAddresses = added(draft.otherAddresses, address);
    notes.report(
      'statement-repeated',
      `${draft.name} has address ${value} here and ${draft.address.value} before; keep the one that is set on the device`,
      notes.place(property),
      {
        bus,
        at: draft.name,
        related: [{ message: `address ${first.value} is said here`, place: first.place }],
        fixes: () =>
          repeatedFixes(
            { text: String(first.value), place: first.place },
            { text: String(value), place: address.place },
            notes.place(property),
          ),
      },
    );
  }
}

/** Reports what was said of a landing before: the first counts. */
function isRepeated(
  { name: at }: LandingDraft,
  before: Place | undefined,
  place: Place,
  bus: string,
  notes: Notes,
): boolean {
  if (!before) return false;
  const [first, second] = [before, place].map((one) => ({ text: notes.textAt(one), place: one })) as [Said, Said];
  const message = `of ${at} the text says ${second.text} here and ${first.text} before; keep the one that holds`;
  const related = [{ message: `${first.text} is said here`, place: before }];
  const fixes = () => repeatedFixes(first, second);
  notes.report('statement-repeated', message, place, { bus, at, related, fixes });
  return true;
}
