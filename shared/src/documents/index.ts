/** Documents that people hold in hand, as plain data. Start reading at `packet.ts` and `make-packet.ts`. */

export { shortCaution } from './cautions.js';
export { clean } from './clean.js';
export * from './make-packet.js';
export * from './packet.js';
export * from './picture.js';
export { readLength, readSlack, type Slack } from './slack.js';
export { standingAlone } from './standing-alone.js';
