/** What each kind of bus is, in a phrase. */
import type { BusKind } from '@fieldpair/shared';

export const kindTopics: Readonly<Record<BusKind, string>> = {
  rs485: 'RS-485 with some protocol that is none of the next three: only what holds for every RS-485 pair is judged',
  'modbus-rtu': 'Modbus RTU on RS-485',
  'bacnet-mstp': 'BACnet MS/TP on RS-485',
  'peer-485': 'ISO/IEC 14908 on RS-485',
  'free-topology': 'ISO/IEC 14908 on a twisted pair of any shape',
  can: 'classic CAN on a line with two terminators',
  ethernet: 'Ethernet on copper: each run is a link between two jacks, and a splice is a box or panel on its way',
  'contact-loop': 'contacts that open or close, read by an input as the resistance of their loop',
  supply: 'low-voltage feed of devices, direct or alternating, from one source',
};
