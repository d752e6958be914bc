/** One node, and two areas that it is said to lie in. */
import type { Fix } from '../../finding.js';
import type { Bus, Landing, StoreNode } from '../../network.js';
import { exampleBoard, exampleCable, headOf, headPort } from '../pair/example.js';
import type { StoreRule } from '../rule.js';

const head = headOf(headPort('field1'), headPort('field2'));
const bus = (name: string, port: string, area: string, node: string) => `
  bus ${name} : modbus-rtu 9600 8E1 on ShieldedPair22 {
    area "${area}"
    from head.${port} terminate switch
    area "Sales floor"
    38 ft to ${node} : CaseBoard address 11 terminate resistor 120 ohm
    shield earthed at head
    colours + white - blue shield drain
  }
`;
const twoBuses = (area: string) => `${exampleCable}${head}${exampleBoard}store northgate {
  node head : SiteHead
${bus('chillers', 'field1', 'Plant room', 'caseA1')}${bus('freezers', 'field2', area, 'caseB1')}}
`;

export const areaContradicted: StoreRule = {
  id: 'area-contradicted',
  scope: 'store',
  severity: 'warning',
  kinds: 'every',
  explanation: {
    what: 'A node is landed on two buses, and their texts put it into two areas.',
    why: 'A device hangs in one place. One of the two headings is wrong, or the wrong device is landed.',
    field: 'One landing schedule sends the installer to the plant room, the other to the back office.',
    mend: 'Put both landings under the heading of the area where the device really is.',
    bad: twoBuses('Back office'),
    good: twoBuses('Plant room'),
    sources: ['definition of the .pair language'],
    since: '0.1.0',
  },
  check({ buses }, _, report) {
    if (!buses.some(({ areas }) => areas.length > 0)) return;
    const first = new Map<StoreNode, Landing>();
    const told = new Set<StoreNode>();
    for (const bus of buses) {
      for (const landing of bus.landings) {
        const { node, area, name, place } = landing;
        if (!node || !area) continue;
        const other = first.get(node);
        if (!other) first.set(node, landing);
        else if (other.area?.value !== area.value && !told.has(node)) {
          told.add(node);
          report({
            bus,
            message: `${name} is under area ${area.value} here, and ${other.name} under ${other.area?.value}; ${node.name} hangs in one of them: write both landings under that one`,
            place,
            related: [
              { message: `${other.name} is under area ${other.area?.value}`, place: other.place },
              { message: `the area ${area.value} begins here`, place: area.place },
            ],
            at: name,
            fixes: () => areaFixes(buses, node),
          });
        }
      }
    }
  },
};

/** The node in each of its areas in turn: which is right only somebody on site knows. */
function areaFixes(buses: readonly Bus[], node: StoreNode): Fix[] {
  const landings = buses.flatMap((bus) =>
    bus.landings.flatMap((landing) => {
      const { area } = landing;
      return landing.node === node && area ? { bus, landing, area: area.value } : [];
    }),
  );
  return [...new Set(landings.map(({ area }) => area))].flatMap((area): Fix[] => {
    const moved = landings.filter((one) => one.area !== area);
    // Two headings of one bus would be written over each other.
    if (new Set(moved.map(({ bus }) => bus)).size < moved.length) return [];
    const there = landings.find((one) => one.area === area)!.landing.name;
    return [
      {
        title: `Put ${moved.map(({ landing }) => landing.name).join(' and ')} under area ${area}, as ${there} is`,
        safe: false,
        edits: moved.map(({ bus, landing }) => ({
          kind: 'set-area',
          bus: bus.index,
          landing: landing.index,
          area,
        })),
      },
    ];
  });
}
