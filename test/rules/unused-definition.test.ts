/** No example of the rule can show this: a faulty one has a finding, and a sound one is whole. */
import { expect, it } from 'vitest';
import { findingsOf, fixtureOf, readMarks } from './fixture.ts';

const FILE = 'faulty.dewsite.yaml';

function unusedWith(point: string): readonly string[] {
  const fixture = fixtureOf('unused-definition');
  const { text } = readMarks(fixture.read(FILE));
  const findings = findingsOf(fixture, FILE, new Map([[FILE, `${text}${point}\n`]]));
  return findings.flatMap(({ rule, message }) => (rule === 'unused-definition' ? message : []));
}

it.each([
  ['stands empty', 0, '  FS-MT-202:'],
  ['has an open bracket', 0, '  FS-MT-202: {space: flour-store'],
  ['is whole', 2, '  FS-MT-202: {space: flour-store}'],
])('where one more point %s, %i things are called unused', (_, count, point) => {
  expect(unusedWith(point)).toHaveLength(count);
});
