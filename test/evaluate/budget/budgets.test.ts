import { describe, expect, it } from 'vitest';
import type { Budget } from '../../../server/src/evaluate/budget/budget.ts';
import type { SourceKind } from '../../../server/src/evaluate/budget/uncertainty-source.ts';
import { budgetSentences } from '../../../server/src/evaluate/budget/words.ts';
import type { PointEvaluation } from '../../../server/src/evaluate/point.ts';
import { relativeDifference } from '../../physics/numeric.ts';
import { assessedPoint, factValue, worstBudget } from '../assessed-point.ts';
import { factsById } from '../facts-by-id.ts';

const WALL =
  'wall: {thickness: 1.5 mm, material: stainless-steel, insulation: 100 mm, insulation-material: mineral-wool}';
const ROOM = `{pressure: 100 kPa, air: {temperature: 20 .. 24 degC, humidity: 40 .. 60 %RH, speed: 0.5 .. 1 m/s}}`;
const CHECKS = 'checks: {interval: 12 months, method: reference-instrument, last: 2026-09-01}';
const PLAIN = 'humidity-probe: {model: plain, mounting: {insertion: 200 mm}}';
const HEATED = 'humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K}, mounting: {insertion: 200 mm}}';
const SLIM = 'air-temperature-probe: {model: slim, mounting: {insertion: 180 mm, spacing: 120 mm, position: beside}}';

function partOf(budget: Budget, kind: SourceKind): number {
  return budget.contributions.find((contribution) => contribution.kind === kind)?.resultUncertainty ?? 0;
}

describe('relative humidity of an unheated probe in a steady room without wall', () => {
  const point = assessedPoint({
    space: ROOM,
    point: `${PLAIN}, reports: {relative-humidity: {tolerance: 4 %RH}}, ${CHECKS}`,
  });
  const budget = worstBudget(point, 'relative-humidity');

  it('by hand: 1.5 %RH with k = 2, 0.5 %RH of drift as limits, combine to 1.6 %RH with k = 2', () => {
    const standard = Math.hypot(0.015 / 2, 0.005 / Math.sqrt(3));
    expect(relativeDifference(budget.standardUncertainty, standard)).toBeLessThan(1e-9);
    expect(factValue(point, 'relative-humidity/expanded-uncertainty')).toBe(2 * budget.standardUncertainty);
  });

  it('the temperature of the sensor cancels: humidity and air temperature rest on the same one', () => {
    expect(partOf(budget, 'sensor-temperature')).toBe(0);
  });

  it('what has no number is named instead of guessed', () => {
    expect(budget.leftOut.join()).toMatch(/wall.*ramp/);
  });

  it('the tolerance is met with the uncertainty allowed for, and nearly every reading lies within it', () => {
    // Φ(z) − Φ(−z) with z = 4/0.80363 = 4.977: Abramowitz and Stegun, table 26.1, gives 1 − 6.4e-7.
    expect(budgetSentences(budget)).toContain(
      'The tolerance of 4 %RH is met, the uncertainty allowed for; over 99.9 % of readings lie within it.',
    );
  });
});

describe('dew point of an unheated probe', () => {
  const space = `{pressure: 101.325 kPa, air: {temperature: 20 degC, humidity: 50 %RH, speed: 0.5 m/s}}`;
  const budget = worstBudget(
    assessedPoint({ space, point: `${PLAIN}, reports: {dew-point: {}}, ${CHECKS}` }),
    'dew-point',
  );

  /** WMO-No. 8, Annex 4.B: slope of the Magnus formula, which differs from IAPWS by under 0.3 % in this range. */
  const magnusSlope = (celsius: number): number => (17.62 * 243.12) / (243.12 + celsius) ** 2;

  it('WMO-No. 8 Magnus formula: 1 %RH at 50 %RH and 20 °C is 0.30 K of dew point, within 1 %', () => {
    const perHumidity = 1 / (0.5 * magnusSlope(budget.value));
    expect(relativeDifference(partOf(budget, 'sensor-accuracy'), 0.0075 * perHumidity)).toBeLessThan(0.01);
  });

  it('WMO-No. 8 Magnus formula: 1 K of the sensor is as much more vapour, within 1 %', () => {
    const perKelvin = magnusSlope(20) / magnusSlope(budget.value);
    expect(relativeDifference(partOf(budget, 'sensor-temperature'), (0.2 / Math.sqrt(3)) * perKelvin)).toBeLessThan(
      0.01,
    );
  });
});

describe('the worst corner', () => {
  it('is no better than any state of a fine grid over the envelope', () => {
    const at = (celsius: number, humidity: number): Budget => {
      const air = `{temperature: ${celsius} degC, humidity: ${humidity} %RH, speed: 2 m/s}`;
      return worstBudget(kiln(`{pressure: 99 kPa, air: ${air}, gradient: 0.5 K/m, ${WALL}}`), 'relative-humidity');
    };
    const air = '{temperature: 50 .. 75 degC, humidity: 35 .. 95 %RH, speed: 2 m/s}';
    const found = worstBudget(kiln(`{pressure: 99 kPa, air: ${air}, gradient: 0.5 K/m, ${WALL}}`), 'relative-humidity');
    let worst = 0;
    for (let celsius = 50; celsius <= 75; celsius += 2.5)
      for (let humidity = 35; humidity <= 95; humidity += 5)
        worst = Math.max(worst, at(celsius, humidity).standardUncertainty);
    expect(found.standardUncertainty).toBeGreaterThanOrEqual(worst * (1 - 1e-9));
    expect(relativeDifference(found.standardUncertainty, worst)).toBeLessThan(0.01);
  });

  it('is sought in every phase, and the least certain phase counts', () => {
    const space = `{pressure: 99 kPa, phases: {warm-up: {temperature: 20 .. 40 degC, humidity: 40 .. 60 %RH}, drying: {temperature: 50 .. 75 degC, humidity: 35 .. 80 %RH}}}`;
    const budgets = kiln(space).budgets.get('relative-humidity');
    expect(budgets?.phases().map(({ at }) => at.phase)).toEqual(['warm-up', 'drying']);
    const uncertainties = budgets?.phases().map(({ standardUncertainty }) => standardUncertainty) ?? [];
    expect(budgets?.worst?.standardUncertainty).toBe(Math.max(...uncertainties));
  });

  function kiln(space: string): PointEvaluation {
    const reports = 'reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: 3 %RH}}';
    return assessedPoint({ space, point: `${HEATED}, ${SLIM}, ${reports}, ${CHECKS}` });
  }
});

describe('inputs', () => {
  const probe = (point: string, space = ROOM): Budget =>
    worstBudget(assessedPoint({ space, point: `${HEATED}, ${SLIM}, ${CHECKS}, ${point}` }), 'relative-humidity');
  const reports = 'reports: {relative-humidity: {air-temperature: air-temperature-probe}}';

  it('IEC 60751 class A at 24 °C is ± 0.198 K, taken as limits', () => {
    const tolerance = probe(reports).contributions.find(({ kind }) => kind === 'probe-accuracy');
    const celsius = probe(reports).at.airCelsius;
    expect(tolerance?.standardUncertainty).toBeCloseTo((0.15 + 0.002 * celsius) / Math.sqrt(3), 12);
  });

  it('the accuracy row is that of the humidity at the heated sensor, not of the air', () => {
    const wet = '{pressure: 100 kPa, air: {temperature: 24 degC, humidity: 96 %RH}}';
    // 96 %RH at 24 °C is 67 %RH at 30 °C: the row to 90 %RH holds.
    const accuracy = probe(reports, wet).contributions.find(({ kind }) => kind === 'sensor-accuracy');
    expect(accuracy?.standardUncertainty).toBe(0.008 / 2);
  });

  it('of several signals the one that adds most is counted', () => {
    const signals = `transmitter: {model: two-probes}, signals: {AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH, receiver: input-8}, HR1: {kind: register, quantity: relative-humidity, address: 1, format: int16, scale: 0.01 %RH}}`;
    const budget = probe(`${reports}, ${signals}`);
    expect(budget.signal).toBe('AO1');
    // 0.05 % of the span from the transmitter, 0.1 % of its range from the input, as limits.
    expect(partOf(budget, 'output-accuracy')).toBeCloseTo(0.0005 / Math.sqrt(3), 12);
    expect(partOf(budget, 'receiver-accuracy')).toBeCloseTo(0.001 / Math.sqrt(3), 12);
    // Half of 100 %RH / 2^8.
    expect(partOf(budget, 'receiver-resolution')).toBeCloseTo(1 / 2 ** 9 / Math.sqrt(3), 12);
  });

  it('ASHRAE Fundamentals 2017 ch. 1 eq. 20: of w = ε e/(p − e), 3 kPa of weather are limits of w · 3 kPa/(p − e)', () => {
    const space = '{air: {temperature: 30 degC, humidity: 60 %RH}}';
    const point = assessedPoint({ space, point: `${HEATED}, reports: {mixing-ratio: {}}, ${CHECKS}` });
    const { state, value } = worstBudget(point, 'mixing-ratio');
    const limits = (value * 3000) / (state.pressure - state.vapourPressure);
    // The enhancement factor moves with the pressure too, by about 3e-8 per pascal: under 1 % of this.
    expect(
      relativeDifference(partOf(worstBudget(point, 'mixing-ratio'), 'weather') * Math.sqrt(3), limits),
    ).toBeLessThan(0.01);
  });

  it('a pressure that is given as one value is taken as known', () => {
    const point = assessedPoint({ space: ROOM, point: `${HEATED}, reports: {mixing-ratio: {}}, ${CHECKS}` });
    const budget = worstBudget(point, 'mixing-ratio');
    expect([partOf(budget, 'pressure'), partOf(budget, 'weather')]).toEqual([0, 0]);
  });
});

describe('the change that helps most', () => {
  it('takes together what one remedy lessens', () => {
    const kit = `dewright: 1
kit: {id: models}
humidity-probes:
  plain: {accuracy: [{relative-humidity: 1.2 %RH, coverage: rectangular}], drift: 1 %RH/year}
temperature-probes: {slim: {accuracy: {class: AA}, drift: 0.4 K/year}}
`;
    const reports =
      'reports: {vapour-pressure-deficit: {air-temperature: air-temperature-probe}, relative-humidity: {}}';
    const point = assessedPoint({ kit, space: ROOM, point: `${PLAIN}, ${SLIM}, ${reports}, ${CHECKS}` });
    const budget = worstBudget(point, 'relative-humidity');
    expect(budget.improvement?.remedy).toBe('sensor');
    expect(budget.improvement?.expandedUncertainty).toBeCloseTo((2 * 0.01) / Math.sqrt(3), 12);
  });
});

describe('there is no budget, and a reason, where', () => {
  const missing = (point: string, kit?: string): string | undefined => {
    const all = `${point}, reports: {relative-humidity: {}, dew-point: {}}, ${CHECKS}`;
    const site = kit === undefined ? { space: ROOM, point: all } : { space: ROOM, point: all, kit };
    return factsById(assessedPoint(site)).get('dew-point/expanded-uncertainty')?.missing;
  };
  const kitOf = (model: string): string => `dewright: 1\nkit: {id: models}\nhumidity-probes: {plain: ${model}}\n`;

  it('the kit does not know the model', () => {
    expect(missing('humidity-probe: {model: unknown}')).toMatch(/no kit describes the model/);
  });
  it('the kit gives no accuracy', () => {
    expect(missing(PLAIN, kitOf('{head-temperature: 0.1 K}'))).toMatch(/no accuracy/);
  });
  it('no row of the accuracy table holds', () => {
    const kit = kitOf('{head-temperature: 0.1 K, accuracy: [{when: 0 .. 50 %RH, relative-humidity: 1 %RH}]}');
    expect(missing(PLAIN, kit)).toMatch(/states no accuracy for 55 %RH/);
  });
  it('a row holds for something unreadable: it must not hold for all', () => {
    const kit = kitOf('{head-temperature: 0.1 K, accuracy: [{when: 0 .. much %RH, relative-humidity: 1 %RH}]}');
    expect(missing(PLAIN, kit)).toMatch(/no accuracy/);
  });
  it('the kit does not say how well the sensor knows its temperature', () => {
    expect(missing(PLAIN, kitOf('{accuracy: [{relative-humidity: 1 %RH}]}'))).toMatch(/knows the temperature/);
  });
  it('nothing says how far the heater warms the sensor', () => {
    expect(missing('humidity-probe: {model: heated, heater: {mode: continuous}}')).toMatch(/warms the sensor/);
  });
  it('the sensor is at the end of a sample line', () => {
    expect(missing('humidity-probe: {model: plain, mounting: {path: sample-line}}')).toMatch(/sample line/);
  });
});
