/** Reports each test as it ends, and 'N passed, N failed' on the last line. */

export default async function* report(events) {
  const began = Date.now();
  let passed = 0;
  let failed = 0;
  for await (const { type, data } of events) {
    if (type === 'test:stdout' || type === 'test:stderr') yield data.message;
    if (type !== 'test:pass' && type !== 'test:fail') continue;
    const { name, details } = data;
    const seconds = (details.duration_ms / 1000).toFixed(1);
    const error = details.error?.cause ?? details.error;
    if (details.type === 'suite') {
      // A suite fails by its tests, which are counted already, or in opening and closing the workbench.
      if (type === 'test:fail' && details.error.failureType !== 'subtestsFailed') {
        failed++;
        yield `✖ ${name}\n${indented(error)}\n`;
      }
    } else if (type === 'test:pass') {
      passed++;
      yield `✔ ${name} (${seconds} s)\n`;
    } else {
      failed++;
      yield `✖ ${name} (${seconds} s)\n${indented(error)}\n`;
    }
  }
  yield `${((Date.now() - began) / 1000).toFixed(0)} s\n${passed} passed, ${failed} failed\n`;
}

function indented(error) {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return text.replaceAll(/^/gm, '    ');
}
