/** What an instrument says it is set to, beside what the site file says. */

import type { PointEvaluation } from '../evaluate/point.ts';
import type { Located } from '../model/located.ts';
import { lowerNode } from '../model/lower.ts';
import type { Setting } from '../model/model-types.generated.ts';
import type { ModelProblem } from '../model/problem.ts';
import { isQuantityName } from '../quantity/quantities.ts';
import { TreeWalker } from '../syntax/cursor.ts';
import { type PointSetting, pointSettings } from './point-settings.ts';
import { type SettingValue, sameSetting } from './setting-value.ts';

export interface RecordedSetting {
  readonly path: string;
  readonly located: Located<string | number | boolean>;
  /** Undefined where the point has no such setting. */
  readonly setting: PointSetting | undefined;
  /** Undefined where it cannot be read. */
  readonly value: SettingValue | undefined;
  readonly problems: readonly ModelProblem[];
  /** What the site file says or implies; undefined where that is nothing. */
  readonly wanted: SettingValue | undefined;
  /** Undefined where one of the two is not known, or they cannot be compared. */
  readonly compared: ComparedSetting | undefined;
}

export interface ComparedSetting {
  readonly setting: PointSetting;
  readonly value: SettingValue;
  readonly wanted: SettingValue;
  readonly agrees: boolean;
}

/** @param recorded the entry of one visit for this point */
export function recordedSettings(recorded: Setting, point: PointEvaluation): readonly RecordedSetting[] {
  const settings = new Map(pointSettings(point).map((setting) => [setting.path, setting]));
  return [...recorded.others].map(([path, located]): RecordedSetting => {
    const setting = settings.get(path);
    const problems: ModelProblem[] = [];
    const value = setting === undefined ? undefined : read(located, setting, recorded, point.tag, problems);
    const wanted = setting?.given?.value ?? (setting?.given === undefined ? setting?.builtIn : undefined);
    return { path, located, setting, value, problems, wanted, compared: compare(setting, value, wanted) };
  });
}

function compare(
  setting: PointSetting | undefined,
  value: SettingValue | undefined,
  wanted: SettingValue | undefined,
): ComparedSetting | undefined {
  if (setting === undefined || value === undefined || wanted === undefined) return undefined;
  const agrees = sameSetting(value, wanted);
  return agrees === undefined ? undefined : { setting, value, wanted, agrees };
}

/** Read by the schema of the site file, so that both are read alike. */
function read(
  { cursor }: RecordedSetting['located'],
  { schema, key, quantity, path }: PointSetting,
  { others }: Setting,
  subject: string,
  problems: ModelProblem[],
): SettingValue | undefined {
  const ofSignal = others.get(`${path.slice(0, -key.length)}quantity`)?.value;
  const speaksOf = typeof ofSignal === 'string' && isQuantityName(ofSignal) ? ofSignal : quantity;
  const context = { kind: 'site', walker: new TreeWalker(new Map()), problems, subject } as const;
  // The lowering follows the schema of the key, and the table of settings names such keys alone.
  return lowerNode(cursor, schema, context, key, speaksOf) as SettingValue | undefined;
}
