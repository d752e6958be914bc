/** What each kind of bus asks of its cable, with the document that does. */
import type { BusKind } from '../network.js';

export interface CableNeeds {
  /** The document asks for a shield. */
  readonly shield?: string;
  /** The document or practice asks for a twisted pair. */
  readonly twisted?: string;
  /** Ohms, both ends included. */
  readonly impedance?: { readonly low: number; readonly high: number; readonly source: string };
  /** Between the conductors; less than this is asked for. */
  readonly capacitance?: { readonly below: number; readonly source: string };
  /** The document asks for a category of ANSI/TIA-568, by rate. */
  readonly category?: true;
  /** The thinnest gauge that the document speaks of. */
  readonly gauge?: { readonly finest: number; readonly source: string };
}

const modbusGuide = 'the Modbus serial line guide V1.02';
/** 120 +-30 ohm, as a published tutorial of a transceiver maker has it for RS-485. */
const workable = { low: 90, high: 150, source: 'RS-485 works with 120 ohm, give or take 30' };
/** Modbus serial line guide V1.02, 3.6: the length limit is given for AWG 26 or thicker. */
const finest26 = { finest: 26, source: `${modbusGuide}, 3.6` };
const balanced = 'a balanced pair';

const rs485: CableNeeds = { twisted: balanced, impedance: workable, gauge: finest26 };

/** Kinds that ask nothing of their cable's waves are absent. */
export const cableNeeds: Readonly<Partial<Record<BusKind, CableNeeds>>> = {
  rs485,
  'peer-485': rs485,
  'modbus-rtu': { ...rs485, shield: `${modbusGuide}, 3.6` },
  // ASHRAE 135 clause 9, seen in a public quotation of the 2004 edition.
  'bacnet-mstp': {
    ...rs485,
    shield: 'ASHRAE 135 clause 9',
    impedance: { low: 100, high: 130, source: 'ASHRAE 135 clause 9' },
    capacitance: { below: 100e-12, source: 'ASHRAE 135 clause 9' },
  },
  // The thinnest cable for which the transceiver data book gives lengths is category 5, 24 AWG.
  'free-topology': {
    twisted: 'the twisted pair channel',
    gauge: { finest: 24, source: 'the free topology data book' },
  },
  // ISO 11898-2:2003, as reprinted.
  can: { twisted: balanced, impedance: { low: 95, high: 140, source: 'ISO 11898-2:2003' } },
  // Category 5: 100 ohm +-15 %.
  ethernet: {
    category: true,
    twisted: 'four twisted pairs',
    impedance: { low: 85, high: 115, source: 'category 5, 100 ohm +-15 %' },
  },
};
