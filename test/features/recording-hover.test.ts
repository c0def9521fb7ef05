import { expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { fixtureOf, readMarks, workspaceOf } from '../rules/fixture.ts';

const fixture = fixtureOf('log-outside-envelope');
const VISIT = 'faulty.dewvisit.yaml';
const TEXT = readMarks(fixture.read(VISIT)).text;

/** The hover without the escapes that keep its text from being taken for markup. */
function hoverOn(
  word: string,
  file = VISIT,
  workspace = workspaceOf(fixture, VISIT, new Map([[VISIT, TEXT]])),
): string {
  const analysis = workspace.analysis(fileUri(fixture.path(file)));
  if (analysis === undefined) throw new Error('no such file');
  return hoverAt(analysis, analysis.parsed.text.indexOf(word) + 1)?.markdown.replaceAll('\\', '') ?? '';
}

it('the log of a visit says what was recorded', () => {
  const hover = hoverOn('wet.csv');
  expect(hover).toContain(
    '201 rows from 2026-09-08T00:00:00Z to 2026-09-08T16:40:00Z, usually one every 300 s: 16.7 h',
  );
  expect(hover).toContain('Outside the envelope for 20 min, 2 % of the time');
  expect(hover).toContain('relative humidity above 80 %RH for 20 min, up to 86.4 %RH');
  expect(hover).toContain('unheated sensor');
});

it('the envelope of a space says what was recorded in it, and other keys do not', () => {
  expect(hoverOn('air:', 'dryer.dewsite.yaml')).toContain('**Recorded** in `wet.csv`');
  expect(hoverOn('58 .. 66', 'dryer.dewsite.yaml')).toContain('air temperature 59 … 65 °C');
  expect(hoverOn('gradient', 'dryer.dewsite.yaml')).not.toContain('Recorded');
});

it('says why nothing is known', () => {
  const workspace = workspaceOf(fixture, VISIT, new Map([[VISIT, TEXT]]));
  const visit = fileUri(fixture.path(VISIT));
  workspace.forgetRecording(visit);
  expect(hoverOn('wet.csv', VISIT, workspace)).toContain('was not read yet');
  const key = workspace.recordingOf(visit)?.key ?? '';
  workspace.setRecording(visit, { key, answer: { kind: 'problem', sentence: 'There is no such file.' } });
  expect(hoverOn('wet.csv', VISIT, workspace)).toContain('There is no such file.');
  expect(hoverOn('air:', 'dryer.dewsite.yaml', workspace)).not.toContain('Recorded');
});
