import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { sampleReport } from '../testing/sample-report.js';
import { checkJunit } from './check-junit.js';

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '',
  isArray: (name) => /^test(suite|case)$/.test(name),
});
const options = { colour: false, failOn: 'error', version: '0.0.0' } as const;

describe('check in JUnit XML', () => {
  const text = checkJunit(sampleReport(), options);
  const { testsuites } = parser.parse(text);

  it('is well-formed, without characters that XML forbids', () => {
    expect(XMLValidator.validate(text)).toBe(true);
    expect(text.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    expect(text).toContain('&lt;swapped&gt; &amp; &quot;crossed&quot;');
  });

  it('has a suite for each file, clean ones too', () => {
    expect(testsuites.testsuite.map((suite: { name: string }) => suite.name)).toEqual([
      'north gate/wiring.pair',
      'plain.pair',
      '../catalogue.pair',
    ]);
    expect(testsuites.testsuite[1].testcase).toEqual([{ name: 'nothing found', classname: 'plain.pair' }]);
  });

  it('counts failures and skipped cases', () => {
    expect(testsuites).toMatchObject({ tests: '5', failures: '1', errors: '0', skipped: '1' });
    const cases = testsuites.testsuite[0].testcase;
    expect(cases.map((one: object) => Object.keys(one).find((key) => /failure|skipped|system-out/.test(key)))).toEqual([
      'system-out',
      'failure',
      'skipped',
    ]);
    expect(cases[1].failure).toMatchObject({ type: 'polarity-crossed' });
  });

  it('fails on what the check fails on', () => {
    const strict = parser.parse(checkJunit(sampleReport(), { ...options, failOn: 'info' }));
    expect(strict.testsuites).toMatchObject({ tests: '5', failures: '3' });
  });
});
