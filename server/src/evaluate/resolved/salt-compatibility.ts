/** Salts that do not go with what a probe brings along from its space. Common practice, no source. */
import type { SaltId } from '../../physics/air/salt-data.ts';

interface Conflict {
  readonly salts: readonly SaltId[];
  readonly exposure: RegExp;
  /** After 'NAME is no salt for a probe from a space with EXPOSURE:'. */
  readonly reason: string;
}

const CONFLICTS: readonly Conflict[] = [
  { salts: ['K2CO3'], exposure: /-acid$/, reason: 'acid on the probe turns the carbonate into another salt' },
  {
    salts: ['KI', 'NaBr'],
    exposure: /^(chlorine|ozone|hydrogen-peroxide|peracetic-acid)$/,
    reason: 'oxidising residue sets iodine or bromine free, which attacks the sensor',
  },
  {
    salts: ['(NH4)2SO4'],
    exposure: /^(caustic-soda|alkaline-cleaner|lime)$/,
    reason: 'alkaline residue sets ammonia free, which attacks the sensor',
  },
];

export interface SaltConflict {
  readonly exposure: string;
  readonly reason: string;
}

export function conflictOf(salt: SaltId, exposures: readonly string[]): SaltConflict | undefined {
  for (const { salts, exposure: pattern, reason } of CONFLICTS) {
    const exposure = exposures.find((candidate) => pattern.test(candidate));
    if (exposure !== undefined && salts.includes(salt)) return { exposure, reason };
  }
  return undefined;
}
