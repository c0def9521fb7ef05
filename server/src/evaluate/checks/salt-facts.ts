/** The facts of a salt check: the reading to expect over each salt, and what a heated sensor would make of it. */
import type { AirState } from '../../physics/air/moist-air.ts';
import { relativeHumidityAt } from '../../physics/air/quantities.ts';
import { SALT_COVERAGE, type SaltHumidity } from '../../physics/air/saturated-salts.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { vapourPressureFromRelativeHumidity } from '../../physics/air/vapour-pressure.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { sensorWarming } from '../dryness/dryness.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';
import type { PlannedSalt, SaltPlan } from './salts.ts';

/** The difference in K between solution and sensor that a note prices. */
const NOTED_DIFFERENCE = 0.1;

export function saltFacts(plan: SaltPlan, resolved: ResolvedPoint): readonly Fact[] {
  const [lowest] = plan.working ?? [];
  const ofSalts = plan.salts.flatMap((salt) =>
    salt.humidity.ok ? factsOfSalt(salt, salt.humidity.value, plan, resolved) : [],
  );
  return [...ofSalts, ...(lowest === undefined ? [] : [lowest])];
}

function factsOfSalt(
  { id, located }: PlannedSalt,
  { relativeHumidity, expandedUncertainty, formula }: SaltHumidity,
  { at }: SaltPlan,
  { settings, heater }: ResolvedPoint,
): readonly Fact[] {
  const celsius = at.value.value;
  const pressure = settings.airPressure.value;
  const vapourPressure = vapourPressureFromRelativeHumidity(relativeHumidity, celsius, pressure);
  const air: AirState = { airCelsius: celsius, pressure, vapourPressure };
  const uncertainty = (expandedUncertainty / SALT_COVERAGE) * settings.coverage.value;
  const apart = relativeHumidity - relativeHumidityAt(air, celsius + NOTED_DIFFERENCE);
  const base = {
    dimension: 'relative-humidity',
    inputs: [
      { label: 'salt', text: id, origin: located.origin },
      { label: 'temperature of the check', text: showQuantity(celsius, 'temperature'), origin: at.origin },
    ] satisfies readonly FactInput[],
    formulas: [formula],
    notes: [
      `Solution, air and sensor have one temperature: a sensor ${showQuantity(NOTED_DIFFERENCE, 'temperature-difference')} warmer reads ${showQuantity(apart, 'relative-humidity')} less.`,
    ],
  } as const;
  const expected: readonly Fact[] = [
    { ...base, id: `salt/${id}/expected-reading`, title: `reading to expect over ${id}`, value: relativeHumidity },
    {
      ...base,
      id: `salt/${id}/expanded-uncertainty`,
      title: `expanded uncertainty of the humidity over ${id}`,
      value: uncertainty,
    },
  ];
  const warming = heater.on ? sensorWarming(heater) : undefined;
  if (warming === undefined) return expected;
  const heated: Fact = {
    ...base,
    id: `salt/${id}/heated-reading`,
    title: `reading of the heated sensor over ${id}`,
    value: relativeHumidityAt(air, celsius + warming.rise),
    inputs: [...base.inputs, warming.input],
    relation: 'U · ew(t) / ew(t + rise)',
    formulas: [formula, SATURATION_OVER_WATER],
  };
  return [...expected, heated];
}
