import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { filePath, fileUri, resolveFile } from '../../server/src/analysis/file-location.ts';
import { type Fixture, fixtureOf, RULES_FOLDER, readMarks, workspaceOf } from '../rules/fixture.ts';
import { answerOf, describeWithDuckDB } from './small-log.ts';

/** The rules see recordings as data; what the fixtures have beside their logs is what the reader makes of those logs. */
describeWithDuckDB('the recordings of the fixtures are what their logs say (vitest -u writes them)', () => {
  const visits = ['log-outside-envelope', 'input-missing'].flatMap((rule) => {
    const files = readdirSync(`${RULES_FOLDER}${rule}`);
    return files.filter((file) => /^[^.]*\.dewvisit\.yaml$/.test(file)).map((visit) => [rule, visit] as const);
  });

  it.each(visits)('%s/%s', async (rule, visit) => {
    const fixture = fixtureOf(rule);
    const answer = await read(fixture, visit, new Map([[visit, readMarks(fixture.read(visit)).text]]));
    const file = fixture.path(visit.replace('.dewvisit.yaml', '.recording.json'));
    await expect(`${JSON.stringify(answer, undefined, 1)}\n`).toMatchFileSnapshot(file);
  });

  it('the envelope that the fix widens covers the recording', async () => {
    const fixture = fixtureOf('log-outside-envelope');
    const mended = fixture.read('dryer.fixed.dewsite.yaml');
    const answer = await read(fixture, 'faulty.dewvisit.yaml', new Map([['dryer.dewsite.yaml', mended]]));
    expect(answer).toMatchObject({ kind: 'summary', summary: { outside: { seconds: 0 } } });
  });

  async function read(fixture: Fixture, visit: string, texts: ReadonlyMap<string, string>) {
    const uri = fileUri(fixture.path(visit));
    const content = workspaceOf(fixture, visit, texts).analysis(uri)?.content;
    if (content?.kind !== 'visit' || content.recording === undefined) throw new Error('the visit names no recording');
    const { log, columns, basis } = content.recording;
    const path = filePath(resolveFile(uri, log.value));
    return answerOf(path, { basis, ...(columns === undefined ? {} : { columns }) });
  }
});
