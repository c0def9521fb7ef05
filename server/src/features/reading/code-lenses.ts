/**
 * One line above every point with its state, above every space with its air, above every plan of checks with the next
 * one, and above a visit with what it found; each opens what it speaks of.
 */

import type { Analysis } from '../../analysis/analysis.ts';
import type { Finding } from '../../analysis/finding.ts';
import { remembered } from '../../base/remembered.ts';
import type { TextRange } from '../../base/text-range.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import { expandedUncertainty } from '../../evaluate/budget/uncertainty-facts.ts';
import { humidityAtSensor } from '../../evaluate/dryness/dryness.ts';
import { isKnown, type KnownFact, showFact } from '../../evaluate/facts/fact.ts';
import { firstProposed } from '../../evaluate/history/history.ts';
import { driftWords, proposedWords } from '../../evaluate/history/words.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { ReportEvaluation } from '../../evaluate/resolved/resolved-point.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { SEVERITIES } from '../../rules/rule.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { extremesOf, shownRange } from '../support/envelope-ranges.ts';
import { countsInWords, findingsBySubject } from '../support/finding-counts.ts';
import { visitLenses } from './visit-lenses.ts';

export const LENS_KINDS = ['points', 'spaces', 'checks', 'visits'] as const;

export type LensKind = (typeof LENS_KINDS)[number];

export interface CodeLens {
  readonly kind: LensKind;
  /** The name that it stands above. */
  readonly above: TextRange;
  readonly title: string;
  /** The place in the same file that it speaks of. */
  readonly opens: TextRange;
}

export function codeLenses(analysis: Analysis, kinds: ReadonlySet<LensKind>): readonly CodeLens[] {
  const { content, parsed } = analysis;
  if (content.kind === 'visit' && kinds.has('visits')) {
    return visitLenses(analysis).map(({ above, title, opens }) => ({
      kind: 'visits',
      above: parsed.rangeOf(above),
      title,
      opens: parsed.rangeOf(opens),
    }));
  }
  if (content.kind !== 'site') return [];
  const lens = (kind: LensKind, above: Origin, { title, opens }: LensDraft): CodeLens => ({
    kind,
    above: parsed.rangeOf(above),
    title,
    opens: 'part' in opens ? parsed.rangeOf(opens) : opens,
  });
  const { spaces, points } = content.site;
  const ofSpaces = [...spaces.values()].flatMap((space) =>
    lensesOfSpace(space).map((draft) => lens('spaces', space.keyOrigin, draft)),
  );
  const findings = findingsBySubject(analysis);
  const ofPoints = [...points.values()].flatMap((point) => {
    const { keyOrigin } = point.entry;
    const drafts = [...stateOfPoint(point), findingsLens(findings.get(point.tag) ?? [], keyOrigin)];
    return drafts.map((draft) => lens('points', keyOrigin, draft));
  });
  const ofChecks = [...points.values()].flatMap((point) => {
    const { checks } = point.point;
    const title = nextCheck(point);
    if (checks === undefined || title === undefined) return [];
    return [lens('checks', checks.keyOrigin ?? checks.origin, { title, opens: checks.origin })];
  });
  return [
    ...(kinds.has('spaces') ? ofSpaces : []),
    ...(kinds.has('points') ? ofPoints : []),
    ...(kinds.has('checks') ? ofChecks : []),
  ];
}

interface LensDraft {
  readonly title: string;
  readonly opens: Origin | TextRange;
}

const lensesOfSpace = remembered((space: SpaceEvaluation): readonly LensDraft[] => {
  const extremes = extremesOf(space, 'dew-point');
  if (extremes === undefined) return [];
  return [{ title: `Dew point ${shownRange(extremes)}`, opens: placeOfWorst(space, extremes.highest) }];
});

const stateOfPoint = remembered((point: PointEvaluation): readonly LensDraft[] => {
  const { facts, space, entry } = point;
  const humidity = facts.get(humidityAtSensor);
  const uncertainty = worstUncertainty(point);
  return [
    ...(isKnown(humidity)
      ? [
          {
            title: `At most ${showFact(humidity)} at the sensor`,
            opens: space === undefined ? entry.keyOrigin : placeOfWorst(space, humidity),
          },
        ]
      : []),
    ...(uncertainty === undefined ? [] : [uncertainty]),
  ];
});

/** The phase at whose corner a fact was found. */
function placeOfWorst({ phases, keyOrigin }: SpaceEvaluation, { at }: KnownFact): Origin {
  return phases.find(({ envelope }) => envelope.phase === at?.phase)?.envelope.keyOrigin ?? keyOrigin;
}

/** Of the reports with a tolerance, the one whose uncertainty takes up most of it. */
function worstUncertainty({ reports, facts }: PointEvaluation): LensDraft | undefined {
  let worst: { readonly share: number; readonly draft: LensDraft } | undefined;
  for (const { quantity, report } of reports) {
    const fact = facts.get(expandedUncertainty(quantity));
    const { tolerance } = report.value;
    if (!isKnown(fact) || tolerance === undefined || !(tolerance.value.value > 0)) continue;
    const share = fact.value / tolerance.value.value;
    if (worst !== undefined && share <= worst.share) continue;
    worst = {
      share,
      draft: { title: uncertaintyWords(quantity, fact, tolerance.value.value), opens: tolerance.origin },
    };
  }
  return worst?.draft;
}

function uncertaintyWords(quantity: ReportEvaluation['quantity'], fact: KnownFact, tolerance: number): string {
  const { title, difference } = quantityInfo(quantity);
  return `Uncertainty of the ${title} ${showFact(fact)} of ${showQuantity(tolerance, difference)}`;
}

/** `Next check due on 2027-09-02, proposed for 2027-01-14 by the variables-data method, drift 0.60 ± 0.30 %RH in a year` */
function nextCheck({ checkPlan, histories }: PointEvaluation): string | undefined {
  const due = checkPlan.due?.due;
  const first = firstProposed(histories);
  if (due === undefined || first === undefined) return due === undefined ? undefined : `Next check due on ${due}`;
  const { history, proposed } = first;
  const drift = driftWords(history);
  const why = drift === undefined ? '' : `, drift ${drift}`;
  return `Next check due on ${due}, proposed ${proposedWords(proposed)}${why}`;
}

/** How many findings of each severity; it opens the first of the gravest. */
function findingsLens(findings: readonly Finding[], point: Origin): LensDraft {
  const gravest = SEVERITIES.map((severity) => findings.find((finding) => finding.severity === severity));
  const first = gravest.find((finding) => finding !== undefined);
  return first === undefined
    ? { title: 'No findings', opens: point }
    : { title: countsInWords(findings), opens: first.range };
}
