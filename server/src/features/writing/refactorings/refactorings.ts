/** Everything that can be rewritten at a place. */
import type { Analysis } from '../../../analysis/analysis.ts';
import type { Workspace } from '../../../analysis/workspace.ts';
import { locate } from '../../../syntax/locate.ts';
import { envelopeConversion } from './convert-envelope.ts';
import { unitConversions } from './convert-unit.ts';
import { pointCopy } from './copy-point.ts';
import { phaseExtraction } from './extract-phase.ts';
import type { Refactoring } from './refactoring.ts';

export function refactoringsAt(workspace: Workspace, analysis: Analysis, offset: number): readonly Refactoring[] {
  const location = locate(analysis.parsed.tree, offset);
  if (location === undefined) return [];
  return [
    ...envelopeConversion(analysis, location),
    ...phaseExtraction(analysis, location),
    ...pointCopy(workspace, analysis, location),
    ...unitConversions(analysis, location),
  ];
}
