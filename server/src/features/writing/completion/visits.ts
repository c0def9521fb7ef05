/** What may stand in a visit file, from the site that was visited: steps of the handover, settings and their values. */
import { handoverPlan } from '../../../handover/plan.ts';
import { type PointSetting, pointSettings } from '../../../handover/point-settings.ts';
import { lastRecord } from '../../../handover/progress.ts';
import { settingWords } from '../../../handover/setting-value.ts';
import { type HandoverStep, stepKeys } from '../../../handover/step.ts';
import { yamlWord } from '../../../syntax/yaml-word.ts';
import { stepSections } from '../../reading/hover-visits.ts';
import { visitIn } from '../../support/visit-places.ts';
import { type CompletionItem, plainItem, withDetail } from './completion-item.ts';
import type { CompletionContext } from './context.ts';

/** Keys of `steps`: what is still open first, each point in the order of work. */
export function stepItems({ place, analysis }: CompletionContext): readonly CompletionItem[] {
  const { visit, site } = visitIn(analysis) ?? {};
  if (visit === undefined || site === undefined || place.path.join('/') !== 'steps') return [];
  const taken = new Set(visit.steps.keys());
  const offers = handoverPlan(site.points.values()).flatMap((step) => {
    const last = lastRecord(site, step);
    const label = stepKeys(step).find((key) => !taken.has(key));
    if (label === undefined || last?.file === analysis.file) return [];
    taken.add(label);
    return [{ step, label, last }];
  });
  const isDone = ({ last }: (typeof offers)[number]): boolean => last?.done === true;
  return [...offers.filter((offer) => !isDone(offer)), ...offers.filter(isDone)].map(({ step, label, last }) =>
    stepItem(step, label, last, place.hasColon),
  );
}

function stepItem(
  step: HandoverStep,
  label: string,
  last: ReturnType<typeof lastRecord>,
  hasColon: boolean,
): CompletionItem {
  const state = last === undefined ? '' : last.done ? `, done on ${last.date}` : `, open on ${last.date}`;
  const entry = [`${label}: {point: ${yamlWord(step.subject)}, done: `, { choices: ['true', 'false'] }, '}'] as const;
  return {
    label,
    kind: 'key',
    detail: `${step.subject}${state}`,
    documentation: stepSections({ step, last }).join('\n\n'),
    insert: hasColon ? [label] : entry,
  };
}

/** Keys of an entry of `settings`: what can be set at its point, with what the site file says of it. */
export function settingItems({ place, point, analysis }: CompletionContext): readonly CompletionItem[] {
  if (analysis.content.kind !== 'visit' || place.path[0] !== 'settings' || point === undefined) return [];
  const open = pointSettings(point).filter(({ path }) => !place.siblings.has(path));
  return open.map((setting) => {
    const { path, schema } = setting;
    return {
      label: path,
      kind: 'key',
      ...withDetail(siteSays(setting)),
      documentation: schema.description ?? '',
      insert: place.hasColon ? [path] : [`${path}: `, { hole: '' }],
      asksNext: true,
    };
  });
}

/** Values of a setting: that of the site file first, then the words that it may be. */
export function settingValues({ place, point, analysis }: CompletionContext): readonly CompletionItem[] {
  const [section, , path] = place.path;
  if (analysis.content.kind !== 'visit' || section !== 'settings' || point === undefined) return [];
  const setting = pointSettings(point).find((each) => each.path === path);
  if (setting === undefined) return [];
  const { schema, given } = setting;
  const written = given?.cursor.node.kind === 'scalar' ? given.cursor.node.text : undefined;
  const first = written === undefined ? [] : [plainItem(written, 'value', { detail: 'as the site file has it' })];
  const words = (schema.enum ?? []).map(String).filter((word) => word !== written);
  const described = words.map((word) =>
    plainItem(word, 'word', { documentation: schema.enumDescriptions?.[schema.enum?.indexOf(word) ?? -1] ?? '' }),
  );
  return [...first, ...described];
}

function siteSays({ given, builtIn }: PointSetting): string | undefined {
  if (given !== undefined) return settingWords(given.value);
  return builtIn === undefined ? undefined : `${settingWords(builtIn)}, built in`;
}
