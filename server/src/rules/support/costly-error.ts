import { airTemperatureError } from '../../evaluate/air-temperature/cost.ts';
import type { ErrorKind } from '../../evaluate/air-temperature/error-models.ts';
import { costLimit } from '../../evaluate/air-temperature/limits.ts';
import { largestSpacing } from '../../evaluate/air-temperature/remedies.ts';
import { isKnown, type KnownFact, showFact } from '../../evaluate/facts/fact.ts';
import { broken } from '../../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { ReportFact } from '../../evaluate/resolved/point-fact.ts';
import { type ThermometerKind, thermometerKindOf } from '../../evaluate/resolved/thermometer.ts';
import type { Located } from '../../model/located.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Related } from '../rule.ts';
import { worstPhase } from './related.ts';
import { atCorner } from './words.ts';

export interface CostlyError {
  /** The quantity that suffers most, in words. */
  readonly title: string;
  readonly tolerance: Located<Quantity>;
  /** In K. */
  readonly error: KnownFact;
  /** In the unit of the quantity. */
  readonly cost: KnownFact;
}

/** The report with this thermometer that the error costs most of its tolerance; undefined where none pays too much. */
export function costliestError(
  view: PointEvaluation,
  thermometer: ThermometerKind,
  kind: ErrorKind,
): CostlyError | undefined {
  const costOf = costLimit(kind);
  let costliest: CostlyError | undefined;
  let largestShare = 0;
  for (const { quantity, report, source } of view.reports) {
    const { tolerance } = report.value;
    const [error, cost] = [view.facts.get(airTemperatureError[kind](quantity)), broken(costOf(quantity), view)?.fact];
    if (thermometerKindOf(source) !== thermometer || tolerance === undefined || !isKnown(error) || cost === undefined)
      continue;
    const share = cost.value / tolerance.value.value;
    if (share <= largestShare) continue;
    largestShare = share;
    costliest = { title: quantityInfo(quantity).title, tolerance, error, cost };
  }
  return costliest;
}

/** `1.2 K at 75 °C and 98 %RH, which costs the relative humidity 7.1 %RH, over a third of its tolerance of 5 %RH` */
export function costWords({ title, tolerance, error, cost }: CostlyError): string {
  const { value, dimension } = tolerance.value;
  return `${showFact(error)}${atCorner(error)}, which costs the ${title} ${showFact(cost)}, over a third of its tolerance of ${showQuantity(value, dimension)}`;
}

export function costRelated({ space }: PointEvaluation, { tolerance, error }: CostlyError): readonly Related[] {
  const shown = showQuantity(tolerance.value.value, tolerance.value.dimension);
  return [
    { message: `The tolerance is ${shown}; one error may take a third of it.`, origin: tolerance.origin },
    ...worstPhase(space, error),
  ];
}

/** Of what the reports with this thermometer need, the one that serves them all. */
export function neededByAll(
  { reports, facts }: PointEvaluation,
  thermometer: ThermometerKind,
  remedy: ReportFact<'length'>,
): KnownFact | undefined {
  const known = reports.flatMap(({ quantity, source }) => {
    const fact = facts.get(remedy(quantity));
    return thermometerKindOf(source) === thermometer && isKnown(fact) ? [fact] : [];
  });
  const sign = remedy === largestSpacing ? -1 : 1;
  return known.toSorted((one, other) => sign * (other.value - one.value))[0];
}
