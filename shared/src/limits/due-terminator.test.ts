import { describe, expect, it } from 'vitest';
import { ohms } from '../quantity.js';
import { busOf, testCable } from '../testing/network.js';
import { dueResistance, isTerminatedWell } from './due-terminator.js';

function end(kind: 'rs485' | 'modbus-rtu' | 'can', impedance: number, terminate: number, capacitance?: number) {
  const cable = testCable({ impedance: ohms(impedance) });
  const termination = { means: 'resistor', resistance: ohms(terminate), ...(capacitance && { capacitance }) };
  const { bus } = busOf(kind, { cable })
    .from('a')
    .to('b', 100, { terminate: [termination] as never })
    .built();
  return { bus, landing: bus.landings[1]! };
}
const isWell = (built: ReturnType<typeof end>, length = 100) => isTerminatedWell(built.bus, built.landing, length);

describe('the terminator that is due', () => {
  it("is the cable's impedance; on CAN only where the standard accepts that (ISO 11898-2:2003: 100 to 130 ohm)", () => {
    const due = (kind: 'rs485' | 'can', impedance: number) => {
      const { bus, landing } = end(kind, impedance, 120);
      return dueResistance(bus, landing);
    };
    expect([due('rs485', 100), due('rs485', 150), due('can', 100), due('can', 150)]).toEqual([100, 150, 100, 120]);
  });

  it('may be a quarter off on RS-485, 150 ohm on Modbus (V1.02, 3.4.5), and up to 300 ohm on a long CAN line', () => {
    expect([90, 150].map((value) => isWell(end('rs485', 120, value)))).toEqual([true, true]);
    expect([89, 151].map((value) => isWell(end('rs485', 120, value)))).toEqual([false, false]);
    expect([isWell(end('rs485', 100, 150)), isWell(end('modbus-rtu', 100, 150))]).toEqual([false, true]);
    expect([isWell(end('can', 120, 240), 41), isWell(end('can', 120, 240), 39)]).toEqual([true, false]);
  });

  it('may have a capacitor in series on RS-485 and never on CAN', () => {
    expect([isWell(end('modbus-rtu', 120, 120, 1e-9)), isWell(end('can', 120, 120, 1e-9))]).toEqual([true, false]);
  });
});
