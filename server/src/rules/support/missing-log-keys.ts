/** What a visit does not say of its recording, so that it is laid against nothing. */
import type { NamedColumns } from '../../evaluate/recorded/answer.ts';
import { isNamedAsLog } from '../../evaluate/recorded/visited-recording.ts';
import type { Located } from '../../model/located.ts';
import { appendLine } from '../../syntax/edit.ts';
import { yamlWord } from '../../syntax/yaml-word.ts';
import type { FindingDraft, FixDraft, VisitView } from '../rule.ts';

export function missingLogKeys({ model, visited, recording }: VisitView): readonly FindingDraft[] {
  const { log, logSpace } = model;
  if (log === undefined || !isNamedAsLog(log.value) || visited.state !== 'found') return [];
  if (recording === undefined) {
    const { spaces } = visited.site;
    // A space that is not there, or whose envelope cannot be computed with, is told where it stands.
    if (logSpace !== undefined || spaces.size < 2 || [...spaces.values()].some(({ complete }) => !complete)) return [];
    const message = () => 'The recording could be laid against its space if log-space said which one it is of.';
    return [{ message, origin: log.origin }];
  }
  if (recording.answer?.kind !== 'columns') return [];
  const { columns, doubts } = recording.answer.detected;
  const why = doubts.length === 0 ? 'The columns that were found are to be confirmed.' : doubts.join(' ');
  return [
    {
      message: () =>
        `The recording could be laid against ${recording.space.id} if log-columns said which column holds what. ${why}`,
      origin: log.origin,
      fixes: () => nameColumns(columns, log),
    },
  ];
}

function nameColumns(columns: NamedColumns, { cursor, keyOrigin }: Located<string>): readonly FixDraft[] {
  const given = Object.entries(columns);
  const { node, part, via } = cursor;
  if (given.length === 0 || keyOrigin === undefined || via !== undefined) return [];
  const shown = given.map(([key, column]) => `${key} from “${column}”`).join(', ');
  const map = given.map(([key, column]) => `${key}: ${yamlWord(column)}`).join(', ');
  const edit = appendLine(part, keyOrigin.start, node.end, `log-columns: {${map}}`);
  return [{ title: `Confirm the columns: ${shown}`, kind: 'choice', edits: [edit] }];
}
