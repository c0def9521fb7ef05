/** Quantities: those that a point can honestly report come first, the others last with the reason. */

import type { SpaceEvaluation } from '../../../evaluate/air/space.ts';
import type { PointEvaluation } from '../../../evaluate/point.ts';
import { DIMENSIONS } from '../../../quantity/dimension.ts';
import { QUANTITY_NAMES, type QuantityName, quantityInfo } from '../../../quantity/quantities.ts';
import { extremesOf, shownRange } from '../../support/envelope-ranges.ts';
import type { CompletionItem, SnippetPiece } from './completion-item.ts';
import type { CompletionContext } from './context.ts';

/** Keys of `reports`. */
export function reportItems({ point, space, place }: CompletionContext): readonly CompletionItem[] {
  const open = QUANTITY_NAMES.filter((name) => !place.siblings.has(name));
  return reasonLast(
    open.map((name) => ({
      name,
      reason: reasonAgainst(name, point, space),
      insert: place.hasColon ? [name] : [`${name}: `, ...reportPieces(name, point)],
    })),
    space,
  );
}

/** Values of `quantity`: what the point reports first. */
export function quantityItems({ point, space, schema }: CompletionContext): readonly CompletionItem[] {
  const reported = point === undefined ? undefined : new Set(point.reports.map(({ quantity }) => quantity));
  const names = QUANTITY_NAMES.filter((name) => schema.enum?.includes(name) === true);
  return reasonLast(
    names.map((name) => {
      const isReported = reported === undefined || reported.has(name);
      return { name, reason: isReported ? undefined : 'not reported by this point', insert: [name] };
    }),
    space,
  );
}

interface Offer {
  readonly name: QuantityName;
  readonly reason: string | undefined;
  readonly insert: readonly SnippetPiece[];
}

function reasonLast(offers: readonly Offer[], space: SpaceEvaluation | undefined): readonly CompletionItem[] {
  const good = offers.filter(({ reason }) => reason === undefined);
  const bad = offers.filter(({ reason }) => reason !== undefined);
  return [...good, ...bad].map(({ name, reason, insert }) => {
    const { about, dimension } = quantityInfo(name);
    const extremes = space === undefined || reason !== undefined ? undefined : extremesOf(space, name);
    const unit = DIMENSIONS[dimension].units[0]?.symbol ?? '';
    const detail = reason ?? (extremes === undefined ? unit : shownRange(extremes));
    return { label: name, kind: 'quantity', detail, documentation: about, insert };
  });
}

function reasonAgainst(
  name: QuantityName,
  point: PointEvaluation | undefined,
  space: SpaceEvaluation | undefined,
): string | undefined {
  const { needsAirTemperature } = quantityInfo(name);
  if (point !== undefined && needsAirTemperature && point.heater.on && point.point.airTemperatureProbe === undefined) {
    return 'no: the heated head does not know the air temperature, and the point has no air-temperature probe';
  }
  const needsOtherPressure = name === 'dew-point-at';
  if (space?.complete === true && !needsOtherPressure && extremesOf(space, name) === undefined) {
    return 'no: no state of the envelope has it';
  }
  return undefined;
}

/** A heated head leaves the air temperature to the probe beside it, and that has to be said. */
function reportPieces(name: QuantityName, point: PointEvaluation | undefined): readonly SnippetPiece[] {
  const { needsAirTemperature, difference } = quantityInfo(name);
  const isAssigned = needsAirTemperature && point?.heater.on === true && point.point.airTemperatureProbe !== undefined;
  const unit = DIMENSIONS[difference].units[0]?.symbol ?? '';
  return [
    isAssigned ? '{air-temperature: air-temperature-probe, ' : '{',
    ...(name === 'dew-point-at' ? ['at-pressure: ', { hole: '101.325' }, ' kPa, '] : []),
    'tolerance: ',
    { hole: '' },
    ` ${unit}}`,
  ];
}
