import { groupedBy } from '../base/grouped.ts';
import { isUnread } from '../evaluate/facts/unread.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { Located } from '../model/located.ts';
import type { Signal, Transmitter, TransmitterModel } from '../model/model-types.generated.ts';
import type { FindingDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'transmitter-full',
  group: 'Supply',
  severity: 'error',
  title: 'A transmitter is asked for more probes or outputs than it has.',
  why: 'What does not fit is found out on site, with the cabinet already wired.',
  mend: 'Use a transmitter with more inputs or outputs, or a second one.',
  leavesAlone:
    'Transmitters whose kit does not say how many probes or which outputs they have. Points share a transmitter where they give it the same serial number.',
  sources: ["the maker's data sheet, as the kit gives it"],
  facts: [],
  fixes: [],
  check: {
    site: ({ points }) => transmittersOf(points.filter(({ entry }) => !entry.broken)).flatMap(overfull),
  },
};

/** One transmitter with all points that share it, in the order of the file. */
type Sharers = readonly PointEvaluation[];

function transmittersOf(points: readonly PointEvaluation[]): readonly Sharers[] {
  const shared = groupedBy(points, ({ transmitterModel, point, tag }) => {
    const serial = point.transmitter?.value.serial?.value;
    return JSON.stringify(serial === undefined ? [tag] : [transmitterModel?.id, serial]);
  });
  return [...shared.values()];
}

interface Use {
  readonly one: string;
  readonly many: string;
  /** What the kit says there is; undefined where it does not say. */
  readonly has: number | undefined;
  readonly capacity: Located<unknown> | undefined;
  readonly countOf: (view: PointEvaluation) => number;
  /** True where any number of them, of all sharers together, takes one. */
  readonly takesOne?: true;
}

function overfull(sharers: Sharers): readonly FindingDraft[] {
  const ref = sharers[0]?.transmitterModel;
  const model = ref?.model?.value;
  if (ref === undefined || model === undefined) return [];
  return usesOf(model).flatMap(({ one, many, has, capacity, countOf, takesOne }) => {
    const all = sharers.reduce((sum, view) => sum + countOf(view), 0);
    const asked = takesOne ? Math.min(1, all) : all;
    const last = sharers.findLast((view) => countOf(view) > 0);
    const transmitter: Located<Transmitter> | undefined = last?.point.transmitter;
    if (has === undefined || asked <= has || last === undefined || transmitter === undefined) return [];
    return {
      message: () =>
        `The transmitter ${ref.id} is asked for ${asked} ${asked === 1 ? one : many}, and it has ${has === 0 ? 'none' : has}. Use one with more, or a second one.`,
      origin: transmitter.value.model?.origin ?? transmitter.origin,
      subject: last.tag,
      related: () => [
        { message: 'The model is here.', origin: capacity?.origin ?? ref.keyOrigin, file: ref.file },
        ...sharers
          .filter((view) => view !== last)
          .map(({ tag, entry }) => ({ message: `${tag} shares the transmitter.`, origin: entry.keyOrigin })),
      ],
    };
  });
}

function usesOf({ probes, outputs }: TransmitterModel): readonly Use[] {
  const { currentLoop, voltage, register } = outputs?.value ?? {};
  /** An output that is left out is not there; one that cannot be read may be. */
  const output = (key: string, capacity: Located<number | boolean> | undefined): Pick<Use, 'has' | 'capacity'> => {
    const unknown = outputs === undefined || isUnread(outputs, key, capacity);
    return { has: unknown ? undefined : Number(capacity?.value ?? 0), capacity };
  };
  const signals = (kind: Signal['kind']) => (view: PointEvaluation) =>
    [...(view.point.signals?.value.values() ?? [])].filter(({ value }) => value.kind === kind).length;
  const loop = output('current-loop', currentLoop);
  const bus = { ...output('register', register), countOf: signals('register'), takesOne: true } as const;
  return [
    { one: 'probe', many: 'probes', has: probes?.value, capacity: probes, countOf: probesOf },
    { one: 'current output', many: 'current outputs', ...loop, countOf: signals('current-loop') },
    { one: 'voltage output', many: 'voltage outputs', ...output('voltage', voltage), countOf: signals('voltage') },
    { one: 'bus of registers', many: 'buses of registers', ...bus },
  ];
}

function probesOf({ point }: PointEvaluation): number {
  return [point.humidityProbe, point.airTemperatureProbe].filter((probe) => probe !== undefined).length;
}
