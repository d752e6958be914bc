/**
 * The cautions that go with every sheet a person takes to the field. They are the usual ones of the trade, common
 * practice with no published source; local codes and the maker's instructions come before all that a packet says.
 */
export const cautions: readonly string[] = [
  'Wiring near mains can kill. Only qualified people do this work, under the local code.',
  'Switch off and lock out every supply in the panel, then prove dead, before you touch, measure or re-terminate.',
  'A bus wire can be live by a fault: measure each wire to earth before you touch it.',
  'Keep bus and other extra-low-voltage wiring apart from mains, in its own raceway, and cross mains at right angles.',
  'The local code and the makers\u2019 instructions come first. Where this sheet differs from them, stop and ask.',
  'This sheet is a plan, not an approval. It never says that something is safe to touch.',
];

/** Before a meter or an insulation tester touches a bus; common practice with no published source. */
export const measuringCautions: readonly string[] = [
  'Measure resistance only on a bus that is switched off, locked out and proven dead.',
  'Never apply an insulation tester to connected electronics: unplug the bus from every device first.',
];

/** The same in two lines, for the foot of every page. */
export const shortCaution =
  'De-energise, lock out, prove dead. Qualified people only. Keep extra-low voltage apart from mains. Local code and makers\u2019 instructions come first. A plan, not an approval.';
