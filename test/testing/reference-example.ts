/** Lines of the language reference in a file in which they may stand, with the sample catalogue at hand. */
import type { BusKind } from '@fieldpair/shared';
import type { Entry } from '../../language/src/reference/index.js';
import { projectOf } from '../../language/src/testing/check-text.js';
import type { Project } from '../../language/src/workspace/project.js';
import { sampleTexts } from './samples.js';

/** The sample catalogue as the reference's examples import it. */
const catalogueFiles: Readonly<Record<string, string>> = Object.fromEntries(
  [...sampleTexts].filter(([path]) => path.startsWith('catalogue/')).map(([path, text]) => [`../${path}`, text]),
);
const imports = Object.keys(catalogueFiles)
  .map((path) => `import "${path}"\n`)
  .join('');

/** A project of one text and of the catalogue, where the text imports it. */
export const exampleProject = (text: string): Project =>
  projectOf({ ...(text.includes('import "../catalogue/') ? catalogueFiles : {}), 'example.pair': text });

/** Rules that judge how something is said, and not how something is wired. */
export const exampleRules: ReadonlySet<string> = new Set([
  ...['syntax', 'unknown-name', 'unknown-word', 'duplicate-name', 'unit-missing', 'unit-unsuited', 'value-impossible'],
  ...['statement-repeated', 'statement-foreign', 'area-contradicted', 'revision-unknown', 'not-on-bus', 'pen-missing'],
  ...[
    'bias-switch-missing',
    'waiver-unreasoned',
    'import-missing',
    'import-unreadable',
    'import-cycle',
    'internal-error',
  ],
]);

/** A head for each kind that examples are of. */
const heads: Readonly<Partial<Record<BusKind, string>>> = {
  'modbus-rtu': 'head.field1',
  can: 'rack.valves',
  ethernet: 'cabinet.jack1',
  'contact-loop': 'alarms.loop1',
  supply: 'psu.out',
};
const nodes = `  node head : SiteHead revision B
  node kiosk : PanelHead
  node rack : RackMaster
  node rooms : RoomServer
  node cabinet : CabinetSwitch
  node alarms : AlarmPanel
  node psu : PowerBox
  node sniffer1 : RoomSniffer
`;

export interface ExampleFile {
  readonly text: string;
  /** Where the example begins in it. */
  readonly start: number;
}

/** A whole file with `lines` where a statement of the entry's scope may stand. */
export function exampleFile({ scope, topic }: Entry, lines = topic.example): ExampleFile {
  const [before, after] = around(scope, topic.kind, lines);
  const head = (needsCatalogue(scope) ? imports : '') + before;
  return { text: `${head}${lines}${after}`, start: head.length };
}

const needsCatalogue = (scope: Entry['scope']) => scope !== 'cable' && scope !== 'device' && scope !== 'port';

function around(scope: Entry['scope'], kind: BusKind | undefined, lines: string): readonly [string, string] {
  switch (scope) {
    case 'file':
      return ['', '\n'];
    case 'cable':
      return ['cable Example {\n', '\n}\n'];
    case 'device':
      return ['device Example {\n', '\n}\n'];
    case 'port':
      return [`device Example {\nrevision A, B\nport net : ethernet\nport one : ${kind ?? 'rs485'} {\n`, '\n}\n}\n'];
    case 'store':
      return [`store example {\n${/node (head|annex)/.test(lines) ? '' : nodes}`, '\n}\n'];
    default: {
      const busKind = kind ?? 'modbus-rtu';
      const course = lines.startsWith('from ') ? '' : `    from ${heads[busKind]}\n`;
      return [`store example {\n${nodes}  bus one : ${busKind} {\n${course}`, '\n  }\n}\n'];
    }
  }
}
