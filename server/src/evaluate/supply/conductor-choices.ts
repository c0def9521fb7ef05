/** The conductors that a person can buy, with what each would leave of the supply voltage at the end of the cable. */

import { CONDUCTORS_SOLD } from '../../physics/electrical/conductors.ts';
import { writeQuantity } from '../../quantity/format-quantity.ts';
import { readQuantity } from '../../quantity/read-quantity.ts';
import type { Fact } from '../facts/fact.ts';
import { factOf } from '../facts/remembered-facts.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { voltageAtProbe } from './facts.ts';

export interface ConductorChoice {
  /** As a file spells it: `0.5 mm2`. */
  readonly text: string;
  /** The voltage at the probe or transmitter with this conductor, or why there is none. */
  readonly voltage: Fact | undefined;
}

/** @param point the point whose cable it is; without one the sizes alone are told */
export function conductorChoices(point: ResolvedPoint | undefined): readonly ConductorChoice[] {
  return CONDUCTORS_SOLD.map(({ crossSection }) => {
    const text = writeQuantity(crossSection, 'area');
    const supposed = point === undefined ? undefined : withConductor(point, text);
    const voltage = supposed && factOf(voltageAtProbe, supposed);
    return { text, voltage };
  });
}

function withConductor(resolved: ResolvedPoint, text: string): ResolvedPoint | undefined {
  const { supply } = resolved.point;
  const cable = supply?.value.cable;
  const read = readQuantity(text, 'area');
  if (supply === undefined || cable === undefined || !read.ok) return undefined;
  const conductor = { value: read.value.value, origin: cable.origin, cursor: cable.cursor };
  const supposed = { ...cable, value: { ...cable.value, conductor } };
  return {
    ...resolved,
    point: { ...resolved.point, supply: { ...supply, value: { ...supply.value, cable: supposed } } },
  };
}
