/** What is offered where, as an editor is told it. */
import { describe, expect, it } from 'vitest';
import { hostOf } from '../testing/check-text.js';
import { Project } from '../workspace/project.js';
import { offersFor } from './completion-offers.js';
import { completionPlace } from './completion-place.js';
import { Desk } from './desk.js';

const catalogue = `cable Pair22 { conductor 22 AWG stranded twisted pairs 1 impedance 100 ohm velocity 66 % colours white, blue }
device Head {
  role head
  port f1 : rs485 { terminals + "A" - "B" bias switch 510 ohm }
  port f2 : rs485 { terminals + "A" - "B" }
}
device Board { port field : rs485 { terminals + "A" - "B" terminator switch 120 ohm address dial 1..99 } }
device Probe { port field : rs485 { terminals + "A" - "B" address dial 1..99 } }
`;
const store = `import "catalogue.pair"
store lark {
  node head : Head
  node spare1 : Board
  network host { }
  bus cases : modbus-rtu 19200 8E1 on Pair22 {
    from head.f1
    10 ft to a : Board address 1
    10 ft to b : Probe address 2
    colours + white - blue
  }
  bus rack : modbus-rtu 9600 8E1 on Pair22 {
    from head.f2
    10 ft to c : Board address 1
  }
}
`;

/** What is offered where a text has a bar. */
function offered(text: string): string[] {
  const offset = text.indexOf('|');
  const whole = text.slice(0, offset) + text.slice(offset + 1);
  const files = { 'shop/store.pair': whole, 'shop/catalogue.pair': catalogue, 'lib/my cables.pair': 'cable P { }' };
  const project = new Project(hostOf({ ...files, 'catalogue.pair': catalogue }));
  for (const file of Object.keys(files)) project.add(file);
  const { due } = completionPlace(whole, offset);
  return offersFor(new Desk(project), 'shop/store.pair', offset, due).map(({ text: one }) => one);
}

const after = (before: string, typed: string) => {
  const text = store.replace(before, typed);
  expect(text).not.toBe(store);
  return offered(text);
};

describe('completion offers', () => {
  it('files that are not imported yet, by the way that leads there', () => {
    expect(after('"catalogue.pair"', '"|"')).toEqual(['../lib/my cables.pair', 'catalogue.pair']);
    expect(after('"catalogue.pair"', '|')).toEqual(['"../lib/my cables.pair"', '"catalogue.pair"']);
    expect(after('"catalogue.pair"', '"../li|')).toContain('../lib/my cables.pair');
  });

  it('nothing in a text or a comment', () => {
    expect(after('store lark {', 'store lark "to |" {')).toEqual([]);
    expect(after('    from head.f1', '    // from |\n    from head.f1')).toEqual([]);
  });

  it('the switch of a device that has one, and the resistor that the cable wants', () => {
    expect(after('address 1\n', 'address 1 terminate |\n')).toEqual(['switch', 'resistor 100 ohm']);
    expect(after('address 2\n', 'address 2 terminate |\n')).toEqual(['resistor 100 ohm']);
    expect(after('address 2\n', 'address 2 terminate resistor |\n')).toEqual(['100 ohm']);
  });

  it('the bias that is there to be switched on', () => {
    expect(after('    colours', '    bias at head |\n    colours')[0]).toBe('switch');
    expect(after('    colours', '    bias at b |\n    colours')[0]).toBe('510 ohm');
  });

  it('the colours of the cable', () => {
    expect(after('colours + white - blue', 'colours |')).toEqual(['+ white - blue', '+ blue - white']);
    expect(after('colours + white - blue', 'colours + |')).toEqual(['white', 'blue']);
  });

  it('character formats of the kind', () => {
    expect(after('19200 8E1', '19200 |')).toEqual(['8E1', '8O1', '8N2']);
  });

  it('heads first for a host network', () => {
    expect(after('host { }', 'host { |}').slice(0, 2)).toEqual(['head', 'spare1']);
  });

  it('an earth of the shield at the beginning of a line, else what happens at the landing', () => {
    expect(after('    colours', '    shield |\n    colours')[0]).toBe('earthed at');
    expect(after('address 2\n', 'address 2 shield |\n')[0]).toBe('through');
  });

  it('nodes that can still be landed before those that are full', () => {
    expect(after('    colours', '    10 ft to |\n    colours')).toEqual(['spare1', 'head', 'a', 'b', 'c']);
    expect(after('from head.f1', 'from head.|')[0]).toBe('f1');
    expect(after('from head.f2', 'from head.|')[0]).toBe('f2');
  });
});
