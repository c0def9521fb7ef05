/** The humidity that a sensor sees at work: what its checks should span. */

import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { relativeHumidityAt } from '../../physics/air/quantities.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { worstFact, worstOverPhases } from '../air/worst-fact.ts';
import type { Fact } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';
import type { SpaceEvaluation } from '../space.ts';
import { sensorWarming } from './dryness.ts';

/** Lowest and highest; undefined without a probe in the air of the space, or where its rise is not known. */
export function humidityAtWork(
  { point, heater }: ResolvedPoint,
  space: SpaceEvaluation,
): readonly [lowest: Fact, highest: Fact] | undefined {
  const probe = point.humidityProbe?.value;
  const warming = sensorWarming(heater);
  if (probe === undefined || probe.mounting?.value.path?.value === 'sample-line' || warming === undefined)
    return undefined;
  const end = (direction: 'lowest' | 'highest', id: string): Fact => {
    const worst = worstOverPhases(space.phases, direction, (state) =>
      relativeHumidityAt(state, state.airCelsius + warming.rise),
    );
    const base = {
      id,
      title: `${direction} humidity at the sensor`,
      dimension: 'relative-humidity',
      relation: 'RHs = e / (f(ts, p) · ew(ts)), ts = t + rise',
      formulas: [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER],
    } as const;
    return worstFact(base, worst, [warming.input]);
  };
  return [end('lowest', 'lowest-humidity-at-sensor'), end('highest', 'humidity-at-sensor')];
}
