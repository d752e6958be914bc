import { createRequire } from 'node:module';
import { rules } from '@fieldpair/shared';
import { Ajv } from 'ajv';
import formats from 'ajv-formats';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { sampleFindings, sampleReport } from '../testing/sample-report.js';
import { checkSarif } from './check-sarif.js';

/** The published schema of the 2.1.0 standard, without the two keywords that only say which draft it is written in. */
const {
  $schema: _draft,
  id: _id,
  ...schema
} = createRequire(import.meta.url)('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json');
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
formats.default(ajv);
const validate = ajv.compile(schema);

describe('check in SARIF', () => {
  const log: Log = JSON.parse(checkSarif(sampleReport(), { colour: true, failOn: 'error', version: '1.2.3' }));
  const run = log.runs[0];
  const results = run?.results ?? [];

  it('is valid by the published schema', () => {
    validate(log);
    expect(validate.errors).toBeNull();
  });

  it('would not be valid with another level', () => {
    expect(validate({ ...log, runs: [{ ...run, results: [{ ...results[0], level: 'info' }] }] })).toBe(false);
  });

  it('describes every rule with its page', () => {
    const described = run?.tool.driver.rules ?? [];
    expect(described.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
    for (const rule of described) {
      expect(rule.help?.markdown).toContain('## Sources');
      expect(rule.shortDescription?.text).toMatch(/\S/);
    }
    for (const { ruleId, ruleIndex } of results) expect(described[ruleIndex ?? -1]?.id).toBe(ruleId);
  });

  it('places findings by URIs and UTF-16 columns', () => {
    expect(run?.columnKind).toBe('utf16CodeUnits');
    const [elsewhere, , crossed] = results.map(({ locations }) => locations?.[0]?.physicalLocation);
    expect(crossed).toEqual({
      artifactLocation: { uri: 'north%20gate/wiring.pair' },
      region: { startLine: 3, startColumn: 18, endLine: 3, endColumn: 25 },
    });
    expect(elsewhere?.artifactLocation?.uri).toMatch(/^file:\/\/\/.*\/catalogue\.pair$/);
  });

  // SARIF 2.1.0 section 3.11.5: braces in a message are written twice.
  it('writes braces twice in messages', () => {
    const findings = sampleFindings.map((finding) => ({ ...finding, message: "'}' ends {0}" }));
    const written: Log = JSON.parse(
      checkSarif(sampleReport(findings), { colour: false, failOn: 'error', version: '1' }),
    );
    expect(written.runs[0]?.results?.[0]?.message.text).toBe("'}}' ends {{0}}");
  });

  it('keeps waived findings as suppressed, with the reason', () => {
    expect(results.map(({ suppressions }) => suppressions?.length)).toEqual([0, 0, 0, 1]);
    expect(results[3]?.suppressions?.[0]).toMatchObject({
      kind: 'inSource',
      justification: 'agreed in change 41 by "both"',
    });
  });
});
