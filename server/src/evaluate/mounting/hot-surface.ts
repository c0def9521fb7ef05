/** From what temperature on the outside of a wall is a hazard to people. */
import { touchCaution } from '../../physics/heat/touch-temperature.ts';

export interface BurnLimit {
  readonly fromCelsius: number;
  /** '10 minutes of contact' */
  readonly contact: string;
}

/** Nobody leans on a wall for longer than this. Common practice, no source. */
const LONGEST_CONTACT_CELSIUS = 48;

/** The limit that a surface passes, for the shortest contact that may burn; contacts of hours are left out. */
export function burnLimitPassed(surfaceCelsius: number): BurnLimit | undefined {
  const caution = touchCaution(surfaceCelsius);
  if (caution === undefined || caution.thresholdCelsius < LONGEST_CONTACT_CELSIUS) return undefined;
  return { fromCelsius: caution.thresholdCelsius, contact: caution.contact };
}
