/** Computed numbers beside the values of the file that they answer to: quiet, and each kind can be switched off. */

import type { Analysis } from '../../analysis/analysis.ts';
import { overlaps, type TextRange } from '../../base/text-range.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import { expandedUncertainty } from '../../evaluate/budget/uncertainty-facts.ts';
import { riseReachable } from '../../evaluate/dryness/reachable-rise.ts';
import { type Fact, isKnown, type KnownFact, showFact } from '../../evaluate/facts/fact.ts';
import { enWords } from '../../evaluate/history/words.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { PointFact } from '../../evaluate/resolved/point-fact.ts';
import { voltageAtProbe } from '../../evaluate/supply/facts.ts';
import { isQuantityName } from '../../quantity/quantities.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { entriesIn } from '../support/entries.ts';
import { extremesOf, shownRange, spaceInPhase } from '../support/envelope-ranges.ts';
import { factSection, sectionsTogether } from '../support/markdown.ts';
import { errorsIn } from '../support/visit-places.ts';
import { factsOfError } from './hover-visits.ts';

export const HINT_KINDS = ['envelope', 'uncertainty', 'supply', 'heater', 'agreement'] as const;

export type HintKind = (typeof HINT_KINDS)[number];

export interface InlayHint {
  readonly kind: HintKind;
  /** Where in the file it stands: behind the value that it answers to. */
  readonly at: number;
  readonly label: string;
  /** Enough to find the facts again, for the tooltip. */
  readonly about: HintSubject;
}

export interface HintSubject {
  readonly kind: 'space' | 'point' | 'reading';
  /** Of a reading, its number in the file. */
  readonly name: string;
  readonly phase?: string;
  /** A quantity of the space, or the id of a fact of the point. */
  readonly fact: string;
}

export function inlayHints(analysis: Analysis, within: TextRange, kinds: ReadonlySet<HintKind>): readonly InlayHint[] {
  const { content, parsed } = analysis;
  const drafts =
    content.kind === 'site'
      ? entriesIn(parsed, within).flatMap(({ map, name }) => {
          const space = map === 'spaces' ? content.site.spaces.get(name) : undefined;
          const point = map === 'points' ? content.site.points.get(name) : undefined;
          return [
            ...(space === undefined ? [] : hintsOfSpace(space)),
            ...(point === undefined ? [] : hintsOfPoint(point)),
          ];
        })
      : hintsOfReadings(analysis);
  return drafts.flatMap(({ behind, ...hint }) => {
    const range = parsed.rangeOf(behind);
    return kinds.has(hint.kind) && overlaps(range, within) ? [{ ...hint, at: range.end }] : [];
  });
}

/** How the numbers of a hint came about, as Markdown. */
export function hintTooltip(analysis: Analysis, { kind, name, phase, fact }: HintSubject): string | undefined {
  const { content } = analysis;
  if (kind === 'reading') return derivations(factsOfError(errorsIn(analysis)[Number(name)]));
  if (content.kind !== 'site') return undefined;
  if (kind === 'point') {
    const point = content.site.points.get(name);
    const key = point === undefined ? undefined : hintedFacts(point).find(({ id }) => id === fact);
    return derivations([key && point?.facts.get(key)]);
  }
  const space = content.site.spaces.get(name);
  const alone = space && spaceInPhase(space, phase);
  const extremes = alone && isQuantityName(fact) ? extremesOf(alone, fact) : undefined;
  return extremes && derivations([extremes.lowest, extremes.highest]);
}

function derivations(facts: readonly (Fact | undefined)[]): string | undefined {
  const known = facts.filter((fact) => fact !== undefined);
  return known.length === 0 ? undefined : sectionsTogether(known.map(factSection));
}

type HintDraft = Omit<InlayHint, 'at'> & { readonly behind: Origin };

/** A dew point beside a relative humidity, and the other way round. */
function hintsOfSpace(space: SpaceEvaluation): readonly HintDraft[] {
  return space.phases.flatMap(({ envelope: { phase, humidityKey, humidity } }): HintDraft[] => {
    const other =
      humidityKey === 'humidity' ? 'dew-point' : humidityKey === 'dew-point' ? 'relative-humidity' : undefined;
    const alone = other && spaceInPhase(space, phase);
    const extremes = other && alone && extremesOf(alone, other);
    if (other === undefined || extremes === undefined) return [];
    const label = `${other === 'dew-point' ? 'dew point ' : ''}${shownRange(extremes)}`;
    const about = { kind: 'space', name: space.id, fact: other, ...(phase === undefined ? {} : { phase }) } as const;
    return [{ kind: 'envelope', behind: humidity.origin, label, about }];
  });
}

function hintsOfPoint({ tag, point, facts, reports, heater }: PointEvaluation): readonly HintDraft[] {
  const hint = (
    kind: HintKind,
    key: PointFact,
    behind: Origin | undefined,
    label: (fact: KnownFact) => string,
  ): readonly HintDraft[] => {
    const fact = facts.get(key);
    if (behind === undefined || !isKnown(fact)) return [];
    return [{ kind, behind, label: label(fact), about: { kind: 'point', name: tag, fact: key.id } }];
  };
  const { supply, transmitter } = point;
  const farEnd = transmitter === undefined ? 'probe' : 'transmitter';
  const hasCable = supply?.value.cable !== undefined;
  return [
    ...reports.flatMap(({ quantity, report }) =>
      hint('uncertainty', expandedUncertainty(quantity), report.value.tolerance?.origin, (fact) => {
        return `uncertainty ${showFact(fact)}`;
      }),
    ),
    ...hint('supply', voltageAtProbe, hasCable ? supply?.value.voltage?.origin : undefined, (fact) => {
      return `${showFact(fact)} at the ${farEnd}`;
    }),
    ...hint('heater', riseReachable, heater.rise?.origin, (fact) => `reaches ${showFact(fact)}`),
  ];
}

/** Those that the hints of a point show. */
function hintedFacts({ reports }: PointEvaluation): readonly PointFact[] {
  return [...reports.map(({ quantity }) => expandedUncertainty(quantity)), voltageAtProbe, riseReachable];
}

/** The En number behind what the point showed. */
function hintsOfReadings(analysis: Analysis): readonly HintDraft[] {
  return errorsIn(analysis).flatMap(({ error: { reading, enNumber } }, index): HintDraft[] => {
    if (enNumber === undefined) return [];
    const label = enWords(enNumber);
    const about = { kind: 'reading', name: String(index), fact: 'reading/error' } as const;
    return [{ kind: 'agreement', behind: reading.shownOrigin, label, about }];
  });
}
