/** Questions about a bus beyond what its text says: faults in words, quantities in words, fixes not applied yet. */
export { type FaultChoices, faultChoices, readFault } from './faults.js';
export { mendedBus } from './mended.js';
export { landingNamed, landingText, quantityFrom, Refusal } from './words.js';
