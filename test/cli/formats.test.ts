import { describe, expect, it } from 'vitest';
import { runIn } from '../samples/built-program.ts';
import { SAMPLES_FOLDER } from '../samples/sample-files.ts';
import { readXml } from './read-xml.ts';

function check(format: string): string {
  return runIn(SAMPLES_FOLDER, 'check', '--format', format, '--fail-on', 'never').output;
}

const { summary, files } = JSON.parse(check('json'));
const found = summary.error + summary.warning + summary.information + summary.hint;

describe('the formats of check tell of the same findings', () => {
  it('SARIF 2.1.0: a result for each, accepted ones with their reason, each rule described', () => {
    const { version, runs } = JSON.parse(check('sarif'));
    expect(version).toBe('2.1.0');
    const [{ tool, results }] = runs;
    const accepted = results.filter((result: { suppressions?: unknown }) => result.suppressions !== undefined);
    expect(results.length - accepted.length).toBe(found);
    expect(accepted.length).toBe(summary.accepted);
    for (const { suppressions } of accepted) expect(suppressions[0].justification).not.toBe('');
    for (const { ruleId, ruleIndex, locations } of results) {
      expect(tool.driver.rules[ruleIndex].id).toBe(ruleId);
      const { region } = locations[0].physicalLocation;
      expect(Math.min(region.startLine, region.startColumn)).toBeGreaterThan(0);
      expect(region.endLine).toBeGreaterThanOrEqual(region.startLine);
    }
  });

  it('JUnit: a suite for each file, a failure for each error and warning, and the counts of each suite are right', () => {
    const root = readXml(check('junit'));
    expect(root).toMatchObject({ name: 'testsuites', attributes: { failures: `${summary.error + summary.warning}` } });
    expect(root.children.map(({ attributes }) => attributes.name)).toEqual(
      files.map(({ path }: { path: string }) => path),
    );
    for (const { name, attributes, children } of root.children) {
      expect(name).toBe('testsuite');
      expect(children.map((child) => child.name)).toEqual(children.map(() => 'testcase'));
      const failed = children.filter(({ children: [result] }) => result?.name === 'failure');
      expect([attributes.tests, attributes.failures]).toEqual([`${children.length}`, `${failed.length}`]);
    }
  });

  it('workflow commands: a line for each', () => {
    const lines = check('github')
      .split('\n')
      .filter((line) => line.startsWith('::'));
    expect(lines).toHaveLength(found);
    for (const line of lines) expect(line).toMatch(/^::(error|warning|notice) file=[^,]+,line=\d+,col=\d+,/);
  });
});
