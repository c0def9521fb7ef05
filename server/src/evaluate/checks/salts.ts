/** The salts of a check plan: what a probe should read over each, and whether they fit the point. */
import type { Outcome } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import type { Located } from '../../model/located.ts';
import type { SaltId } from '../../physics/air/salt-data.ts';
import { SALT_IDS, type SaltHumidity, saltHumidity } from '../../physics/air/saturated-salts.ts';
import type { OutsideFormula } from '../../physics/formula.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { humidityAtSensor, lowestHumidityAtSensor } from '../dryness/dryness.ts';
import { isKnown, type KnownFact } from '../facts/fact.ts';
import { completeSpace } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { conflictOf, type SaltConflict } from '../resolved/salt-compatibility.ts';

export interface PlannedSalt {
  readonly id: SaltId;
  readonly located: Located<string>;
  /** At the temperature of the check, or why it has none there. */
  readonly humidity: Outcome<SaltHumidity, OutsideFormula>;
  readonly conflict: SaltConflict | undefined;
}

export interface SaltPlan {
  readonly at: Located<Quantity>;
  readonly salts: readonly PlannedSalt[];
  /** Lowest and highest humidity that the sensor sees at work; undefined where that is not known. */
  readonly working: WorkingHumidity | undefined;
  /** Which end of the working humidity the salts leave too far outside, if any; undefined where that is not known. */
  readonly leaves: 'neither' | 'wet' | 'dry' | undefined;
  /** Salts that would fit, from dry to wet; none where the working humidity is not known. */
  readonly fitting: readonly SaltId[];
}

/** How far the working humidity may reach beyond the salts. Common practice, no source. */
const SALT_SLACK = 0.15;

/** How far a salt that is proposed for the dry end may lie inside the working humidity. Common practice, no source. */
const DRY_END_SLACK = 0.05;

/** The salts on most shelves, from dry to wet. Common practice, no source. */
const USUAL_SALTS: readonly SaltId[] = ['LiCl', 'MgCl2', 'Mg(NO3)2', 'NaCl', 'KCl', 'K2SO4'];

/** Undefined where the plan checks by no salt, or at a temperature that is not given. */
export const saltPlan = remembered((resolved: ResolvedPoint): SaltPlan | undefined => {
  const space = completeSpace(resolved);
  const { method, salts: named, at } = resolved.point.checks?.value ?? {};
  if (space === undefined || method?.value !== 'saturated-salt' || named === undefined || at === undefined)
    return undefined;
  const celsius = at.value.value;
  const exposures = (space.located.value.exposure?.value ?? []).map(({ value }) => value);
  const salts = named.value.flatMap((located): PlannedSalt[] => {
    const id = SALT_IDS.find((salt) => salt === located.value);
    if (id === undefined) return [];
    return [{ id, located, humidity: saltHumidity(id, celsius), conflict: conflictOf(id, exposures) }];
  });
  const working = workingHumidity(resolved);
  const allKnown = salts.length > 0 && salts.length === named.value.length;
  return {
    at,
    salts,
    working,
    leaves: working === undefined || !allKnown ? undefined : endLeft(salts, working),
    fitting: working === undefined ? [] : fittingSalts(working, celsius, exposures),
  };
});

type WorkingHumidity = readonly [lowest: KnownFact, highest: KnownFact];

function workingHumidity({ facts }: ResolvedPoint): WorkingHumidity | undefined {
  const [lowest, highest] = [facts.get(lowestHumidityAtSensor), facts.get(humidityAtSensor)];
  return isKnown(lowest) && isKnown(highest) ? [lowest, highest] : undefined;
}

/** Undefined where one of the salts has no humidity at the temperature of the check. */
function endLeft(salts: readonly PlannedSalt[], [lowest, highest]: WorkingHumidity): SaltPlan['leaves'] {
  const values = salts.flatMap(({ humidity }) => (humidity.ok ? [humidity.value.relativeHumidity] : []));
  if (values.length < salts.length) return undefined;
  if (Math.max(...values) < highest.value - SALT_SLACK) return 'wet';
  return Math.min(...values) > lowest.value + SALT_SLACK ? 'dry' : 'neither';
}

/** The wettest usual salt below the working humidity and the driest above it, or the nearest there is. */
function fittingSalts(
  [lowest, highest]: WorkingHumidity,
  celsius: number,
  exposures: readonly string[],
): readonly SaltId[] {
  const usable = USUAL_SALTS.flatMap((id) => {
    const humidity = saltHumidity(id, celsius);
    if (!humidity.ok || conflictOf(id, exposures) !== undefined) return [];
    return [{ id, relativeHumidity: humidity.value.relativeHumidity }];
  });
  const below =
    usable.findLast(({ relativeHumidity }) => relativeHumidity <= lowest.value + DRY_END_SLACK) ?? usable[0];
  const above = usable.find(({ relativeHumidity }) => relativeHumidity >= highest.value) ?? usable.at(-1);
  return [...new Set([below, above].flatMap((salt) => (salt === undefined ? [] : [salt.id])))];
}
