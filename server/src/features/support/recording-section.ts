/** What recordings say, as Markdown: in a visit of its own log, in a site of those of a space. */
import type { Analysis } from '../../analysis/analysis.ts';
import type { RecordingSummary } from '../../evaluate/recorded/summary.ts';
import type { ReadRecording } from '../../evaluate/recorded/visited-recording.ts';
import {
  excessWords,
  extentWords,
  faultWords,
  outsideWords,
  rampWords,
  rangeWords,
  sensorWords,
} from '../../evaluate/recorded/words.ts';
import { escapeMarkdown, inlineCode, sectionsTogether } from './markdown.ts';

/** The keys of a visit that speak of its recording. */
const KEYS_OF_LOG: readonly string[] = ['log', 'log-space', 'log-columns'];

/** @param path of the place in the file, as keys */
export function recordingSections({ content }: Analysis, path: readonly string[]): readonly string[] {
  const [top = '', entry, ...inner] = path;
  if (content.kind === 'visit' && KEYS_OF_LOG.includes(top)) return [visitSection(content.recording)];
  if (content.kind !== 'site' || top !== 'spaces') return [];
  const isEnvelope = inner.length === 0 || inner[0] === 'air' || inner[0] === 'phases';
  if (!isEnvelope) return [];
  return content.recordings.flatMap(({ space, log, answer }) => {
    if (space.id !== entry || answer?.kind !== 'summary') return [];
    const { summary } = answer;
    const lines = [outsideWords(summary), ...excessWords(summary), ...rangeWords(summary)];
    return [[`**Recorded** in ${inlineCode(log.value)}`, listOf(lines)].join('\n\n')];
  });
}

function visitSection(recording: ReadRecording | undefined): string {
  if (recording === undefined) return 'It is laid against no space: `log-space` says of which one it is.';
  const { answer, space } = recording;
  if (answer === undefined) return 'The recording was not read yet.';
  if (answer.kind === 'problem') return escapeMarkdown(answer.sentence);
  if (answer.kind === 'columns') return escapeMarkdown(answer.detected.doubts.join(' '));
  return summarySection(space.id, answer.summary);
}

function summarySection(space: string, summary: RecordingSummary): string {
  const faults = faultWords(summary.faults);
  return sectionsTogether([
    `**Laid against** ${inlineCode(space)}: ${escapeMarkdown(`${extentWords(summary)} ${outsideWords(summary)}`)}`,
    listOf(excessWords(summary)),
    '**Humidity at its sensors**',
    listOf(summary.sensors.map(sensorWords)),
    '**The envelope that it supports**',
    listOf([...rangeWords(summary), ...rampWords(summary)]),
    ...(faults.length === 0 ? [] : ['**What was wrong with rows and times**', listOf(faults)]),
  ]);
}

function listOf(lines: readonly string[]): string {
  return lines.map((line) => `- ${escapeMarkdown(line)}`).join('\n');
}
