/** Turns the one envelope of a space into the first of its phases, so that others can be written beside it. */
import type { Analysis } from '../../../analysis/analysis.ts';
import { columnOf, contentEnd, newlineOf } from '../../../syntax/lines.ts';
import type { Location } from '../../../syntax/locate.ts';
import { type Refactoring, replacing } from './refactoring.ts';

const PHASE_NAME = 'operation';

/** On the key `air` of a space that is written over several lines. */
export function phaseExtraction({ file }: Analysis, location: Location): readonly Refactoring[] {
  const { part, partOffset, path, step, on } = location;
  if (path.length !== 3 || path[0] !== 'spaces' || path[2] !== 'air' || on !== 'key' || step === undefined) return [];
  const { key, value } = step;
  const column = columnOf(part, key.start);
  const isAlone = part.text.slice(key.start - column, key.start).trim() === '';
  if (!isAlone || (value.kind !== 'map' && value.kind !== 'alias')) return [];
  const newline = newlineOf(part);
  const indent = ' '.repeat(column + 2);
  const behindKey = part.text.slice(key.end, contentEnd(part, { start: key.end, end: value.end }));
  const moved = behindKey.replace(/\n(?=[^\r\n])/g, '\n  ');
  const text = `phases:${newline}${indent}${PHASE_NAME}${moved}`;
  const range = { start: partOffset + key.start, end: partOffset + key.end + behindKey.length };
  return [replacing(file, range, text, `Make this envelope a phase named “${PHASE_NAME}”`, 'extract')];
}
