import { expect, it } from 'vitest';
import { applyEdits } from '../../server/src/base/text-range.ts';
import { findingsOf, fixtureOf, readMarks } from './fixture.ts';

it('each setting that the site file spells out can be mended the other way round, in the visit', () => {
  const fixture = fixtureOf('setting-differs');
  const file = 'faulty.dewvisit.yaml';
  const { text } = readMarks(fixture.read(file));
  const found = findingsOf(fixture, file, new Map([[file, text]]));
  const inVisit = found.flatMap(({ fixes }) => fixes.filter(({ title }) => title.startsWith('Keep the site file')));
  expect(inVisit.map(({ title }) => title.replace(/^.*: (\S+) .*$/, '$1'))).toEqual([
    'heater',
    'relative-humidity.air-temperature',
    'AO1.span',
    'humidity-probe.serial',
  ]);
  const mended = applyEdits(
    text,
    inVisit.flatMap(({ edits }) => edits),
  );
  const left = findingsOf(fixture, file, new Map([[file, mended]])).map(({ message }) => message.split(' ')[0]);
  expect(left).toEqual(['“AO1.current”']);
});
