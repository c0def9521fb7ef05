/** The salts that a probe can be checked over, with the humidity that each gives at the temperature of the check. */
import { SALT_IDS, saltFormula, saltHumidity, saltName } from '../../physics/air/saturated-salts.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import { conflictOf } from './salt-compatibility.ts';

export interface SaltChoice {
  /** As files spell it: `NaCl`. */
  readonly id: string;
  readonly name: string;
  /** A fraction, where the temperature is given and the salt is valid at it. */
  readonly relativeHumidity: number | undefined;
  /** Why it is no salt for this check, where it is none. */
  readonly objection: string | undefined;
}

/** Every salt that a check may name, as files spell it. */
export const SALT_NAMES: readonly string[] = SALT_IDS;

/** The salt that a reading says it was compared over, such as NaCl in `saturated-salt NaCl`, whether it is known or not. */
export function saltUsed(using: string | undefined): string | undefined {
  return /^saturated-salt (\S+)$/.exec(using ?? '')?.[1];
}

/** @param celsius temperature of the check, where it is given @returns every salt, from dry to wet */
export function saltChoices(celsius: number | undefined, exposures: readonly string[]): readonly SaltChoice[] {
  return SALT_IDS.map((id) => {
    const humidity = celsius === undefined ? undefined : saltHumidity(id, celsius);
    const [valid] = saltFormula(id).validity;
    const outside =
      humidity === undefined || humidity.ok || valid === undefined
        ? undefined
        : `known from ${showRange(valid.low, valid.high, 'temperature')} only`;
    return {
      id,
      name: saltName(id),
      relativeHumidity: humidity?.ok === true ? humidity.value.relativeHumidity : undefined,
      objection: outside ?? conflictOf(id, exposures)?.reason,
    };
  });
}
