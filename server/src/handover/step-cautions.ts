/** The cautions that a step of the handover carries: those of the hazards of its space that the work touches. */

import { cautionsFor } from '../evaluate/cautions.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { Hazard } from '../model/model-types.generated.ts';

/** What is done in a step, as far as it decides who can be hurt. */
export type Work = 'entering' | 'fitting' | 'heating' | 'wiring';

const TOUCHED: Readonly<Record<Work, (hazard: Hazard) => boolean>> = {
  entering: () => true,
  fitting: (hazard) => hazard !== 'electrical',
  heating: isFlammable,
  wiring: (hazard) => hazard === 'electrical' || isFlammable(hazard),
};

function isFlammable(hazard: Hazard): boolean {
  return hazard.startsWith('flammable-zone');
}

export function hazardsOf({ space }: PointEvaluation): readonly Hazard[] {
  return (space?.located.value.hazards?.value ?? []).map(({ value }) => value);
}

/** `caution`, where the space has a hazard that the work touches. */
export function cautionOf(point: PointEvaluation, work: Work): { readonly caution?: string } {
  const cautions = cautionsFor(hazardsOf(point).filter(TOUCHED[work]));
  return cautions.length === 0 ? {} : { caution: cautions.join(' ') };
}
