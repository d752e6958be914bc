/** What helps while a store is written: completion, rename, formatting. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { picture, scenario, stores } from './scenario.mjs';

scenario('offers the ports that fit the bus', async (workbench) => {
  await workbench.openFile('trial/typing.pair');
  const labels = await workbench.completions(
    { line: 15, column: 15 },
    (all) => all.some((label) => label.startsWith('field')),
    {
      keep: true,
    },
  );
  await picture(workbench, 'completion-ports');
  assert.ok(
    labels.some((label) => label.startsWith('field2')),
    labels.join(', '),
  );
  assert.ok(!labels.some((label) => label.startsWith('net')), labels.join(', '));
});

scenario('offers the addresses that are free', async (workbench) => {
  await workbench.openFile('trial/typing.pair');
  await workbench.goTo({ line: 9, column: 46 });
  await workbench.page.keyboard.press('End');
  await workbench.page.keyboard.press('Enter');
  await workbench.page.keyboard.type('10 ft to caseD : TrialBoard address ');
  await workbench.page.keyboard.press('Escape');
  const labels = await workbench.completions({ line: 10, column: 41 }, (all) =>
    all.some((label) => /^3\b/.test(label)),
  );
  assert.ok(!labels.some((label) => /^[12]\b/.test(label)), labels.join(', '));
  await picture(workbench, 'completion-addresses');
});

scenario('renames a node in every file', async (workbench) => {
  await workbench.openFile('trial/nodes.pair');
  await workbench.goTo({ line: 5, column: 9 });
  await workbench.page.keyboard.press('F2');
  const input = workbench.page.locator('.rename-box input.rename-input');
  await input.waitFor();
  await input.fill('compressor');
  await picture(workbench, 'rename');
  await input.press('Enter');
  await workbench.editorText((text) => text.includes('node compressor : TrialBoard'));
  await workbench.openFile('trial/buses.pair');
  await workbench.editorText((text) => text.includes('38 ft to compressor address 4 terminate switch'));
});

scenario('formats a file and keeps its comments', async (workbench) => {
  await workbench.openFile('trial/untidy.pair');
  await workbench.command('Format Document');
  await workbench.editorText((text) => text.includes('  bus cases : modbus-rtu 19200 8E1 on TrialPair {'));
  await picture(workbench, 'formatted');
  await workbench.save();
  assert.equal(
    readFileSync(join(stores, 'trial/untidy.pair'), 'utf8'),
    [
      'import "catalogue.pair"',
      'store untidy "Badly spaced" {',
      '  bus cases : modbus-rtu 19200 8E1 on TrialPair {',
      '    from head.field1 : TrialHead terminate switch // the head',
      '    38 ft to caseA : TrialBoard address 1 terminate switch',
      '',
      '    shield earthed at head',
      '    colours + white - blue shield drain',
      '  }',
      '}',
      '',
    ].join('\n'),
  );
});
