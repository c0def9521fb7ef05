/** The facts of a salt check: the reading to expect over each salt, and what a heated sensor would make of it. */
import type { AirState } from '../../physics/air/moist-air.ts';
import { relativeHumidityAt } from '../../physics/air/quantities.ts';
import { SALT_COVERAGE, type SaltHumidity } from '../../physics/air/saturated-salts.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { vapourPressureFromRelativeHumidity } from '../../physics/air/vapour-pressure.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Computed } from '../facts/declared-fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import { sensorWarming } from '../resolved/heater.ts';
import { saltFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type PlannedSalt, type SaltPlan, saltPlan } from './salts.ts';

/** The difference in K between solution and sensor that a note prices. */
const NOTED_DIFFERENCE = 0.1;

export const expectedReading = saltFact('expected-reading', {
  title: (salt) => `reading to expect over ${salt}`,
  dimension: 'relative-humidity',
  compute: ofPlanned((planned) => ({
    value: planned.humidity.relativeHumidity,
    derivation: () => explained(planned),
  })),
});

export const saltUncertainty = saltFact('expanded-uncertainty', {
  title: (salt) => `expanded uncertainty of the humidity over ${salt}`,
  dimension: 'relative-humidity',
  compute: ofPlanned((planned, { settings }) => ({
    value: (planned.humidity.expandedUncertainty / SALT_COVERAGE) * settings.coverage.value,
    derivation: () => explained(planned),
  })),
});

/** What a sensor that stays heated makes of it. */
export const heatedReading = saltFact('heated-reading', {
  title: (salt) => `reading of the heated sensor over ${salt}`,
  dimension: 'relative-humidity',
  compute: ofPlanned((planned, { heater }) => {
    const warming = heater.on ? sensorWarming(heater) : undefined;
    if (warming === undefined) return undefined;
    const { air, humidity } = planned;
    return {
      value: relativeHumidityAt(air, air.airCelsius + warming.rise),
      derivation: () => {
        const { inputs, notes } = explained(planned);
        return {
          inputs: [...inputs, warming.input],
          relation: 'U · ew(t) / ew(t + rise)',
          formulas: [humidity.formula, SATURATION_OVER_WATER],
          notes,
        };
      },
    };
  }),
});

interface PlannedAir {
  readonly salt: PlannedSalt;
  readonly humidity: SaltHumidity;
  readonly at: SaltPlan['at'];
  /** Over the solution. */
  readonly air: AirState;
}

function ofPlanned(compute: (planned: PlannedAir, point: ResolvedPoint) => Computed | undefined) {
  return (point: ResolvedPoint, id: string): Computed | undefined => {
    const plan = saltPlan(point);
    const salt = plan?.salts.find((candidate) => candidate.id === id);
    if (plan === undefined || salt === undefined || !salt.humidity.ok) return undefined;
    const humidity = salt.humidity.value;
    const airCelsius = plan.at.value.value;
    const pressure = point.settings.airPressure.value;
    const vapourPressure = vapourPressureFromRelativeHumidity(humidity.relativeHumidity, airCelsius, pressure);
    return compute({ salt, humidity, at: plan.at, air: { airCelsius, pressure, vapourPressure } }, point);
  };
}

function explained({ salt, humidity, at, air }: PlannedAir) {
  const apart = humidity.relativeHumidity - relativeHumidityAt(air, air.airCelsius + NOTED_DIFFERENCE);
  return {
    inputs: [
      { label: 'salt', text: salt.id, origin: salt.located.origin },
      ...quantityInput('temperature of the check', at),
    ],
    formulas: [humidity.formula],
    notes: [
      `Solution, air and sensor have one temperature: a sensor ${showQuantity(NOTED_DIFFERENCE, 'temperature-difference')} warmer reads ${showQuantity(apart, 'relative-humidity')} less.`,
    ],
  };
}
