import { expect, it } from 'vitest';
import type { CancellationToken, DocumentDiagnosticReport } from 'vscode-languageserver';
import type { RecordingAnswer } from '../../server/src/evaluate/recorded/answer.ts';
import type { RecordingQuestion } from '../../server/src/lsp/recording-reader.ts';
import { fixtureOf, readMarks } from '../rules/fixture.ts';
import type { Session } from './session.ts';
import { sessionOfTest } from './session-of-test.ts';

const fixture = fixtureOf('log-outside-envelope');
const SITE_URI = 'file:///site/dryer.dewsite.yaml';
const VISIT_URI = 'file:///site/check.dewvisit.yaml';
const SITE = fixture.read('dryer.dewsite.yaml');
const VISIT = readMarks(fixture.read('faulty.dewvisit.yaml')).text;
const ANSWER = JSON.parse(fixture.read('faulty.recording.json')) as RecordingAnswer;

interface Asked {
  readonly question: RecordingQuestion;
  readonly token: CancellationToken;
  answer(): void;
}

const PATIENCE = { timeout: 20_000 };

/** Opens the visit in an editor that reads recordings when the test tells it to. */
async function open(): Promise<{ readonly session: Session; readonly asked: readonly Asked[] }> {
  const files = { [SITE_URI]: SITE, [VISIT_URI]: VISIT };
  const started = await sessionOfTest({ files, capabilities: { textDocument: { diagnostic: {} } }, isOurs: true });
  const asked: Asked[] = [];
  const read = (question: RecordingQuestion, token: CancellationToken): Promise<RecordingAnswer> =>
    new Promise((resolve) => {
      asked.push({ question, token, answer: () => resolve(ANSWER) });
      token.onCancellationRequested(() => resolve({ kind: 'problem', sentence: 'It was cancelled.' }));
    });
  started.editor.onRequest<RecordingAnswer, void>('dewright/readRecording', read);
  await started.open(VISIT_URI, VISIT);
  return { session: started, asked };
}

async function rulesAt({ editor }: Session, uri: string): Promise<readonly unknown[]> {
  const report: DocumentDiagnosticReport = await editor.sendRequest('textDocument/diagnostic', {
    textDocument: { uri },
  });
  return report.kind === 'full' ? report.items.map(({ code }) => code) : [];
}

const count = (asked: readonly Asked[]) => () => asked.length;

it('the recording of an open visit is asked for with what it is laid against, and its finding then appears', async () => {
  const { session, asked } = await open();
  await expect.poll(count(asked), PATIENCE).toBe(1);
  expect(asked[0]?.question).toMatchObject({
    log: 'file:///site/wet.csv',
    columns: { time: 'time', 'air-temperature': 'T_dry', 'relative-humidity': 'RH', speed: 'v' },
    basis: { space: 'dryer-1', rises: [0] },
  });
  expect(await rulesAt(session, VISIT_URI)).not.toContain('log-outside-envelope');
  asked[0]?.answer();
  await expect.poll(() => rulesAt(session, VISIT_URI), PATIENCE).toContain('log-outside-envelope');
  expect(asked).toHaveLength(1);
});

it('what is typed into the envelope cancels the reading, and it is read against the new one', async () => {
  const { session, asked } = await open();
  await expect.poll(count(asked), PATIENCE).toBe(1);
  await session.open(SITE_URI, SITE.replace('40 .. 80 %RH', '40 .. 90 %RH'));
  await expect.poll(count(asked), PATIENCE).toBe(2);
  expect(asked[0]?.token.isCancellationRequested).toBe(true);
  expect(asked[1]?.question.basis.envelopes[0]?.bounds[1]).toMatchObject({ quantity: 'relative-humidity', high: 0.9 });
});

it('a log that is written to is read again', async () => {
  const { session, asked } = await open();
  await expect.poll(count(asked), PATIENCE).toBe(1);
  asked[0]?.answer();
  await expect.poll(() => rulesAt(session, VISIT_URI), PATIENCE).toContain('log-outside-envelope');
  await session.editor.sendNotification('dewright/recordingChanged', { log: 'file:///site/another.csv' });
  await session.editor.sendNotification('dewright/recordingChanged', { log: 'file:///site/wet.csv' });
  await expect.poll(count(asked), PATIENCE).toBe(2);
  expect(await rulesAt(session, VISIT_URI)).not.toContain('log-outside-envelope');
});

it('a log that is written to while it is read is read again, and that the reading was given up is not kept', async () => {
  const { session, asked } = await open();
  await expect.poll(count(asked), PATIENCE).toBe(1);
  await session.editor.sendNotification('dewright/recordingChanged', { log: 'file:///site/wet.csv' });
  await expect.poll(count(asked), PATIENCE).toBe(2);
  expect(asked[0]?.token.isCancellationRequested).toBe(true);
  asked[1]?.answer();
  await expect.poll(() => rulesAt(session, VISIT_URI), PATIENCE).toContain('log-outside-envelope');
});
