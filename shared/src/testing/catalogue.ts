/** Cables and devices for tests. */
import type { Cable, Device, Place, Port } from '../network.js';
import { faradsPerMetre, ohms, ratio } from '../quantity.js';

const nowhere: Place = { file: 'test.pair', start: 0, end: 0 };

/** A 22 AWG solid pair of 120 ohm; whatever is given differs. */
export function testCable(differing: Partial<Cable> = {}): Cable {
  return {
    name: 'TestPair',
    place: nowhere,
    gauge: 22,
    stranding: 'solid',
    pairs: 1,
    shield: 'foil',
    drain: true,
    impedance: ohms(120),
    capacitance: faradsPerMetre(42e-12),
    velocity: ratio(0.66),
    colours: [],
    ...differing,
  };
}

/** A device with one RS-485 port named `bus`, of an eighth of a unit load unless said otherwise. */
export function testDevice(name: string, port: Partial<Port> = {}, differing: Partial<Device> = {}): Device {
  return {
    name,
    place: nowhere,
    role: 'node',
    revisions: [],
    revisionPlaces: [],
    ports: [
      {
        name: 'bus',
        place: nowhere,
        kind: 'rs485',
        speaks: [],
        terminals: { plus: '+', minus: '-' },
        unitLoad: 1 / 8,
        needsBias: false,
        rates: [],
        ...port,
      },
    ],
    indicators: [],
    marks: [],
    ...differing,
  };
}

export const nodeDevice: Device = testDevice('TestNode');
export const headDevice: Device = testDevice('TestHead', {}, { role: 'head' });
