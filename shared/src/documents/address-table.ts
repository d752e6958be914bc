/** The address table of a bus: what to set on which device, as its own dial or switches show it. */
import { lineOf } from '../figures/line.js';
import type { BusStudy } from '../figures/study.js';
import type { AddressSetting, Bus, Landing, Store } from '../network.js';
import { blank, named, nothing, number, text, tick } from './cells.js';
import { deviceLines } from './names.js';
import type { Block, Cell, Column, Row } from './packet.js';
import { addressPosition } from './setting-picture.js';

const columns: readonly Column[] = [
  { head: 'No.', width: 5 },
  { head: 'Landing', width: 17 },
  { head: 'Device and connector', width: 27 },
  { head: 'Address', width: 9 },
  { head: 'Set it like this', width: 24 },
  { head: 'Done', width: 7 },
  { head: 'Found at', width: 8 },
];

/** Undefined for a bus none of whose devices has or takes an address. */
export function addressTable({ store, bus }: BusStudy, id: string): Block[] | undefined {
  const addressed = bus.landings.filter(({ address, port }) => address ?? port?.address);
  if (addressed.length === 0) return undefined;
  const rows = addressed.map(
    (landing, group): Row => ({
      group,
      cells: [
        number(landing.index + 1),
        named(landing.name, landing.node?.label),
        text(...deviceLines(landing)),
        landing.address ? number(landing.address.value) : text('none in the plan'),
        positionCell(landing),
        tick,
        blank,
      ],
    }),
  );
  const table = { id, title: `Addresses of ${bus.label ?? bus.name}`, columns, rows, notes: notesFor(addressed) };
  return [
    { kind: 'table', table },
    { kind: 'paragraph', text: `Free between them: ${freeAddresses(bus, lineOf(store, bus))}.` },
  ];
}

function positionCell({ address, port }: Landing): Cell {
  if (!address) return nothing;
  if (!port?.address) return text('the catalogue does not say how');
  const position = addressPosition(port.address, address.value);
  if (!position) return text(`cannot be set: it goes from ${port.address.low} to ${port.address.high}; ask`);
  const { picture, ...words } = position;
  return picture ? { kind: 'picture', picture, ...words } : text(words.text);
}

function notesFor(landings: readonly Landing[]): string[] {
  const settings = landings.flatMap(({ port }) => port?.address ?? []);
  const has = (test: (setting: AddressSetting) => boolean) => settings.some(test);
  return [
    'Set one device at a time while it is off; no two devices of one bus have the same address.',
    'Write under \u2018found at\u2019 what it stood at before.',
    ...(has(({ means }) => means === 'dial') ? ['Dial: turn the arrow or slot to the digit shown.'] : []),
    ...(has(({ means }) => means === 'switches')
      ? ['Switches: black is the slider, and the numbers are those beside the switches.']
      : []),
    ...(has(({ means, first, on }) => means === 'switches' && first !== undefined && on === undefined)
      ? [
          'Where the catalogue does not say which side is ON, the picture has it on top: go by the ON that is printed on the device.',
        ]
      : []),
  ];
}

/** Addresses between the least and the most of a bus that nobody on its line has, as ranges. */
function freeAddresses(bus: Bus, line: readonly Bus[]): string {
  const usedOn = ({ landings }: Bus) =>
    landings.flatMap(({ address }) => (address && Number.isInteger(address.value) ? address.value : []));
  const own = usedOn(bus);
  const [least, most] = [Math.min(...own), Math.max(...own)];
  const used = new Set(line.flatMap(usedOn).filter((address) => least <= address && address <= most));
  const sorted = [...used].sort((one, other) => one - other);
  const gaps = sorted.flatMap((address, index) => {
    const next = sorted[index + 1];
    if (next === undefined || next === address + 1) return [];
    return next === address + 2 ? String(address + 1) : `${address + 1} to ${next - 1}`;
  });
  return gaps.length === 0 ? 'none' : gaps.join(', ');
}

/** The address spaces that several units share on the host network; nothing where the store has none. */
export function hostAddresses({ networks }: Store): Block[] {
  return networks.flatMap((network, index): Block[] => [
    {
      kind: 'table',
      table: {
        id: `host-addresses-${index + 1}`,
        title: `Addresses on the host network ${network.name}`,
        columns: [
          { head: 'Unit', width: 30 },
          { head: 'Address', width: 9 },
          { head: 'Done', width: 7 },
        ],
        rows: network.members.map(({ node, address }, group) => ({
          group,
          cells: [
            named(node?.name ?? 'unknown', node?.label),
            address ? number(address.value) : text('none in the plan'),
            tick,
          ],
        })),
        notes: [],
      },
    },
  ]);
}
