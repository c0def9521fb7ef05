import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import { dateOf } from '../evaluate/resolved/visit-reading.ts';
import type { PointSetting } from '../handover/point-settings.ts';
import { type SettingValue, settingWords } from '../handover/setting-value.ts';
import { type Cursor, textOf } from '../syntax/cursor.ts';
import { appendPair, replaceScalar } from '../syntax/edit.ts';
import { yamlWord } from '../syntax/yaml-word.ts';
import type { FindingDraft, FixDraft, Rule, VisitView } from './rule.ts';
import { type SettingOfPoint, settingsOfVisit } from './support/visit-settings.ts';

export const rule: Rule = {
  name: 'setting-differs',
  group: 'Visits',
  severity: 'error',
  title: 'An instrument says that it is set to something other than the site file has.',
  why: 'Whoever reads the site file takes it for what is out there. Alarms, spans and sources of air temperature that are set otherwise make readings that nobody can account for.',
  mend: 'Set the instrument as the site file has it, and write down at the next visit what it then says; or, where the instrument is right, set the site file to it. What a visit found at another time is accepted there with a reason rather than changed.',
  leavesAlone:
    'Settings of which the site file says nothing and for which nothing is built in, and those that a later visit has found as the site file has them.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    visit: (view) => settingsOfVisit(view).flatMap((setting) => differs(setting, view)),
  },
};

function differs({ site, point, recorded }: SettingOfPoint, { model }: VisitView): readonly FindingDraft[] {
  const { path, located, compared } = recorded;
  if (compared === undefined || compared.agrees || isToldLater(site, point.tag, path, dateOf(model))) return [];
  const { setting, value, wanted } = compared;
  const { file } = site;
  const { given, map } = setting;
  const [here, says] =
    given === undefined ? ['It would be given here.', 'leaves it at'] : ['The site file says it here.', 'says'];
  return [
    {
      message: () =>
        `“${path}” is set to ${settingWords(value)}, and the site file ${says} ${settingWords(wanted)}. Set the instrument to that, or the site file to the instrument.`,
      origin: located.origin,
      subject: point.tag,
      related: () => [{ message: here, origin: given?.origin ?? map.keyOrigin ?? map.origin, file }],
      fixes: () => [
        adopt(setting, typeof value === 'string' ? yamlWord(value) : String(located.value), value, file),
        ...recordAsGiven(setting, located.cursor, wanted),
      ],
    },
  ];
}

/** What was found later counts instead. */
function isToldLater({ visits }: EvaluatedSite, tag: string, path: string, date: string): boolean {
  const later = visits.filter(({ model }) => dateOf(model) > date);
  return later
    .flatMap(({ model }) => model.settings)
    .some(({ value }) => value.point?.value === tag && value.others.has(path));
}

/** The other way round, where the site file spells the value out. */
function recordAsGiven({ given, path }: PointSetting, at: Cursor, wanted: SettingValue): readonly FixDraft[] {
  if (given === undefined) return [];
  const title = `Keep the site file and write it into the visit: ${path} ${settingWords(wanted)}; the instrument must be set to it`;
  return [{ title, kind: 'choice', edits: [replaceScalar(at, yamlWord(textOf(given.cursor)))] }];
}

/** @param text as a file spells it */
function adopt(
  { given, map, key, path, written }: PointSetting,
  text: string,
  value: SettingValue,
  file: string,
): FixDraft {
  const edit = given === undefined ? appendPair(map.cursor, key, written(text)) : replaceScalar(given.cursor, text);
  return {
    title: `Set the site file to the instrument: ${path} ${settingWords(value)}`,
    kind: 'choice',
    edits: [edit && { ...edit, file }],
  };
}
