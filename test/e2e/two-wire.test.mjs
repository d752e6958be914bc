/** Alarm loops and supplies in the editor: what stands beside their landings, what hovers say, and a bridge by light bulb. */
import assert from 'node:assert/strict';
import { picture, scenario } from './scenario.mjs';

scenario('shows voltages and alarms beside the landings, and a summary above', async (workbench) => {
  await workbench.openFile('power/store.pair');
  const lenses = await workbench.texts('.codelens-decoration', (all) =>
    all.some((text) => /3 contacts, normal 4\.7 kohm/.test(text)),
  );
  assert.ok(lenses.some((text) => /2 contacts, normal 4\.7 kohm/.test(text)));
  const text = await workbench.editorText((shown) => /alarm 9\.4 kohm/.test(shown));
  assert.match(text, /124 ft, alarm 9\.4 kohm/);
  await workbench.goTo({ line: 33, column: 1 });
  await workbench.editorText((shown) => /134 ft, 23\.\d V/.test(shown));
  await picture(workbench, 'loops-and-supplies');
});

scenario('tells of a contact what its alarm looks like at the input', async (workbench) => {
  await workbench.openFile('power/store.pair');
  const text = await workbench.hover({ line: 14, column: 14 }, (shown) => /alarm/.test(shown));
  await picture(workbench, 'hover-contact');
  assert.match(text, /9\.4 kohm \(8\.93 to 9\.87 kohm\), read as alarm/);
});

scenario('bridges a contact by the light bulb', async (workbench) => {
  await workbench.openFile('as-found/cold-rooms.pair');
  const isBare = ({ code, message }) => code === 'loop-misread' && message.includes('call2');
  const problems = await workbench.problemsOf('cold-rooms.pair', (all) => all.some(isBare));
  await workbench.quickFix('Bridge call2 with 4.7 kohm', problems.find(isBare));
  await workbench.editorText((text) => /call2 : CallButton breaks \+ bridged 4\.7 kohm/.test(text));
  const after = await workbench.problemsOf('cold-rooms.pair', (all) => !all.some(isBare));
  assert.equal(after.length, problems.length - 1);
});
