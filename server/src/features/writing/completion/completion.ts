/** Completion: what may stand at the cursor, likeliest first, whether the line parses yet or not. */
import type { Analysis } from '../../../analysis/analysis.ts';
import type { Workspace } from '../../../analysis/workspace.ts';
import type { TextRange } from '../../../base/text-range.ts';
import { RULE_NAMES, ruleNamed } from '../../../rules/rule-names.ts';
import type { CompletionItem } from './completion-item.ts';
import { conductorItems } from './conductors.ts';
import { type CompletionContext, completionContext } from './context.ts';
import { keyItems } from './keys.ts';
import { quantityItems, reportItems } from './quantities.ts';
import { referenceItems, saltItems } from './references.ts';
import { entrySnippets, skeletonItem } from './snippets.ts';
import { unitItems } from './units.ts';
import { settingItems, settingValues, stepItems } from './visits.ts';
import { takesQuantity, valueItems, wordItems } from './words.ts';

export interface Completions {
  /** What the text of an item replaces. */
  readonly range: TextRange;
  readonly items: readonly CompletionItem[];
}

export function completionsAt(workspace: Workspace, analysis: Analysis, offset: number): Completions {
  const context = completionContext(workspace, analysis, offset);
  if (context === undefined) return { range: { start: offset, end: offset }, items: [] };
  const { role, word, needsBlank } = context.place;
  const items = role === 'key' ? keysAt(context) : valuesAt(context);
  return { range: word, items: needsBlank ? items.map(withBlank) : items };
}

function keysAt(context: CompletionContext): readonly CompletionItem[] {
  const { kind, place, analysis } = context;
  const isEmptyFile = analysis.parsed.tree.parts.every(({ part }) => part.root === undefined);
  const last = place.path.at(-1);
  return [
    ...(isEmptyFile ? [skeletonItem(kind)] : []),
    ...keyItems(context),
    ...stepItems(context),
    ...entrySnippets(context),
    ...(last === 'reports' ? reportItems(context) : []),
    ...settingItems(context),
    ...(place.path.join('/') === 'site/rules' ? ruleItems(context) : []),
  ];
}

function valuesAt(context: CompletionContext): readonly CompletionItem[] {
  const units = unitItems(context);
  if (units !== undefined) return units;
  const { path, before } = context.place;
  if (path.at(-1) === 'using' && before === 'saturated-salt ') return saltItems(context);
  if (before !== '') return [];
  if (takesQuantity(context.schema)) return quantityItems(context);
  const conductors = conductorItems(context);
  if (conductors.length > 0) return conductors;
  return [...settingValues(context), ...referenceItems(context), ...wordItems(context), ...valueItems(context)];
}

function ruleItems({ place }: CompletionContext): readonly CompletionItem[] {
  const open = RULE_NAMES.filter((name) => !place.siblings.has(name));
  return open.map((name) => ({
    label: name,
    kind: 'key',
    documentation: ruleNamed(name)?.title ?? '',
    insert: place.hasColon ? [name] : [`${name}: `, { choices: ['off', 'hint', 'information', 'warning', 'error'] }],
  }));
}

function withBlank(item: CompletionItem): CompletionItem {
  return { ...item, insert: [' ', ...item.insert] };
}
