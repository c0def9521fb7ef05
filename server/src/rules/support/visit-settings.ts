/** The settings that a visit has recorded, each beside what the site file says of it. */
import { nearestWord } from '../../base/nearest.ts';
import { remembered } from '../../base/remembered.ts';
import type { EvaluatedSite } from '../../evaluate/evaluated-site.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { pointSettings } from '../../handover/point-settings.ts';
import { type RecordedSetting, recordedSettings } from '../../handover/recorded-setting.ts';
import type { ModelProblemRule } from '../../model/problem.ts';
import type { FindingDraft, FixDraft, VisitView } from '../rule.ts';
import { problemsUnder } from './file-problems.ts';
import { changeTo } from './reference-fixes.ts';

export interface SettingOfPoint {
  readonly site: EvaluatedSite;
  readonly point: PointEvaluation;
  readonly recorded: RecordedSetting;
}

/** Of points that are not there, or whose text does not parse, nothing is told. */
export const settingsOfVisit = remembered(({ model, visited }: VisitView): readonly SettingOfPoint[] => {
  if (visited.state !== 'found') return [];
  const { site } = visited;
  return model.settings.flatMap(({ value }) => {
    const point = site.points.get(value.point?.value ?? '');
    if (point === undefined || point.entry.broken) return [];
    return recordedSettings(value, point).map((recorded) => ({ site, point, recorded }));
  });
});

/** What cannot be read of the values, under one of the rules that say so. */
export function settingProblems(rule: ModelProblemRule, view: VisitView): readonly FindingDraft[] {
  const problems = settingsOfVisit(view).flatMap(({ recorded }) => recorded.problems);
  return problemsUnder(rule, { kind: 'visit', problems });
}

/** Words that the setting does not know. */
export function wordsNotKnown(view: VisitView): readonly FindingDraft[] {
  return settingsOfVisit(view).flatMap(({ point, recorded }) => {
    const { path, located, setting, value, problems } = recorded;
    if (setting === undefined || value !== undefined || problems.length > 0) return [];
    const words = (setting.schema.enum ?? []).map(String);
    const near = nearestWord(String(located.value), words)?.word;
    const known = words.length === 0 ? '' : ` It is one of ${words.join(', ')}.`;
    return {
      message: () => `“${located.value}” is no value of ${path}.${known}`,
      origin: located.origin,
      subject: point.tag,
      fixes: () => changeTo(near, { ...located, value: String(located.value) }),
    };
  });
}

/** Paths that no instrument of the point has. */
export function settingsNotThere(view: VisitView): readonly FindingDraft[] {
  return settingsOfVisit(view).flatMap(({ point, recorded: { path, located, setting } }) => {
    if (setting !== undefined) return [];
    const known = pointSettings(point).map((each) => each.path);
    const near = nearestWord(path, known)?.word;
    const at = located.keyOrigin ?? located.origin;
    const rename = near === undefined || at.definedAt !== undefined ? undefined : { ...at, newText: near };
    const fixes = (): readonly FixDraft[] => [{ title: `Change to ${near}`, kind: 'choice', edits: [rename] }];
    const then = near === undefined ? `It has ${known.join(', ')}.` : `The nearest is “${near}”.`;
    return { message: () => `${point.tag} has no setting “${path}”. ${then}`, origin: at, subject: point.tag, fixes };
  });
}
