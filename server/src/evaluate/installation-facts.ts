/** The facts of how a point is installed: its supply, its loops, what its heater reaches, its fitting, its probes. */
import { airTemperatureCostFacts } from './air-temperature/cost.ts';
import { reachableRiseFacts } from './dryness/reachable-rise.ts';
import type { Fact } from './facts/fact.ts';
import { fittingFacts } from './mounting/fitting-facts.ts';
import type { ResolvedPoint } from './point.ts';
import type { SpaceEvaluation } from './space.ts';
import { supplyFacts } from './supply/facts.ts';
import { loopFacts } from './supply/loop-facts.ts';

/** @param space absent where it is not known or cannot be computed with; supply and loops do not need it */
export function installationFacts(resolved: ResolvedPoint, space: SpaceEvaluation | undefined): readonly Fact[] {
  const supply = supplyFacts(resolved);
  const voltage = supply.find(({ id }) => id === 'voltage-at-probe');
  const electrical = [...supply, ...loopFacts(resolved, voltage)];
  if (space === undefined) return electrical;
  return [
    ...electrical,
    ...reachableRiseFacts(resolved, space, voltage),
    ...fittingFacts(resolved, space),
    ...airTemperatureCostFacts(resolved, space),
  ];
}
