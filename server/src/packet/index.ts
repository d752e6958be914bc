/** Packets behind one door, in a bundle of its own: a language server loads it when a packet is first asked for. */
export { makePacket } from '@fieldpair/shared/documents';
export { fontProblem, packetFiles, writeFiles } from './write-packet.js';
