import { describe, expect, it } from 'vitest';
import { isKnown } from '../../../server/src/evaluate/facts/fact.ts';
import { driftOn } from '../../../server/src/evaluate/history/drift-forecast.ts';
import { factValue } from '../assessed-point.ts';
import { factsById } from '../facts-by-id.ts';
import { humidityHistory, pair, type VisitText, visitedPoint } from '../visited-point.ts';

const YEAR_DAYS = 365.2425;

/** Half a percent a year, found each September and left as it was. */
const YEARLY: readonly VisitText[] = [
  { date: '2022-09-01', purpose: 'commissioning', readings: [pair(0)] },
  { date: '2023-09-01', readings: [pair(0.5)] },
  { date: '2024-09-01', readings: [pair(1)] },
  { date: '2025-09-01', readings: [pair(1.5)] },
];

function driftOf(visits: readonly VisitText[]) {
  const { drift } = humidityHistory(visitedPoint({ visits }));
  if (!drift.ok) throw new Error(drift.problem);
  return drift.value;
}

describe('errors', () => {
  it('ISO 13528: En is the error over both expanded uncertainties, the point’s own from its budget', () => {
    const point = visitedPoint({ visits: YEARLY.slice(1, 2) });
    const [first] = humidityHistory(point).errors;
    const { pointUncertainty = 0, enNumber = 0, error = 0 } = first ?? {};
    expect(error).toBeCloseTo(0.005, 12);
    expect(pointUncertainty).toBe(factValue(point, 'relative-humidity/expanded-uncertainty'));
    expect(enNumber).toBeCloseTo(0.005 / Math.hypot(pointUncertainty, 0.01), 12);
  });

  it('over a salt the process adds nothing: the uncertainty is less than at the worst corner', () => {
    const overSalt = pair(0.5, 'using: saturated-salt Mg(NO3)2, at: 25 degC');
    const inPlace = pair(0.5, 'using: reference-instrument, at: 20 degC');
    const point = visitedPoint({
      visits: [{ date: '2025-09-01', readings: [overSalt, inPlace] }],
      probes: `humidity-probe: {model: plain}
    air-temperature-probe: {model: slim, mounting: {spacing: 1000 mm, position: beside}}`,
    });
    const [salt, place] = humidityHistory(point).errors;
    const worst = point.budgets.get('relative-humidity')?.worst?.expandedUncertainty ?? 0;
    expect(place?.pointUncertainty).toBe(worst);
    expect(salt?.pointUncertainty).toBeLessThan(worst);
  });
});

describe('the drift', () => {
  it('by hand: half a percent found each year is half a percent a year', () => {
    expect(driftOf(YEARLY).perYear).toBeCloseTo(0.005, 5);
  });

  it('JCGM 100, by hand: four yearly readings of u 0.5 %RH know it to 1.96 · 0.5/√5 %RH a year', () => {
    // Σ(t − t̄)² of −1.5, −0.5, 0.5 and 1.5 years is 5; leap days change it by less than 1e-3.
    const { perYearUncertainty, isSignificant } = driftOf(YEARLY);
    expect(perYearUncertainty / ((1.96 * 0.005) / Math.sqrt(5))).toBeCloseTo(1, 2);
    expect(isSignificant).toBe(true);
  });

  it('runs on across an adjustment: what was adjusted is no drift', () => {
    const adjusted = [
      ...YEARLY.slice(0, 2),
      {
        date: '2024-09-01',
        readings: [
          pair(1, 'reference-uncertainty: 1 %RH, state: as-found'),
          pair(0, 'reference-uncertainty: 1 %RH, state: as-left'),
        ],
      },
      { date: '2025-09-01', readings: [pair(0.5)] },
    ];
    expect(driftOf(adjusted).perYear).toBeCloseTo(0.005, 5);
    expect(driftOn(driftOf(adjusted), '2025-09-01').error).toBeCloseTo(0.005, 5);
    const stretches = driftOf(adjusted).segment.stretches.map(({ from, adjustedSince }) => [
      from,
      adjustedSince.toFixed(3),
    ]);
    expect(stretches).toEqual([
      ['2022-09-01', '-0.010'],
      ['2024-09-01', '0.000'],
    ]);
  });

  it.each([
    ['a repair', { purpose: 'repair', readings: [pair(0)] }],
    ['an as-left reading alone', { readings: [pair(0, 'state: as-left')] }],
  ] as const)('begins again after %s', (_what, fresh) => {
    const point = visitedPoint({ visits: [...YEARLY, { date: '2026-09-01', ...fresh }] });
    expect(humidityHistory(point).drift).toEqual({
      ok: false,
      problem:
        'a drift needs readings from 3 visits since the point was put into service, mended or adjusted unseen, and there are 1',
    });
  });

  it('does not count salt readings that leave open whether the heater of the probe worked', () => {
    const probes = `humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K, set-at: factory}}
    air-temperature-probe: {model: slim}`;
    const overSalt = (heater: string) =>
      YEARLY.map((visit) => ({ ...visit, readings: [pair(0, `using: saturated-salt NaCl, at: 25 degC${heater}`)] }));
    const drift = (heater: string) => humidityHistory(visitedPoint({ visits: overSalt(heater), probes })).drift.ok;
    expect([drift(''), drift(', heater: off')]).toEqual([false, true]);
  });

  it('without the uncertainty of every reference the scatter tells how well it is known', () => {
    const scattered = [0, 0.7, 0.8, 1.5].map((error, year) => ({
      date: `${2022 + year}-09-01`,
      readings: [pair(error, 'using: laboratory')],
    }));
    const { fit } = driftOf(scattered);
    expect(fit.degreesOfFreedom).toBe(2);
  });
});

describe('the tolerance', () => {
  it('by hand: from 1.5 %RH at 0.5 %RH a year 3 %RH is reached three years later', () => {
    const point = visitedPoint({ visits: YEARLY });
    const { reached } = humidityHistory(point);
    // Leap days make the years of the readings uneven by a day.
    expect(reached?.expected).toMatch(/^2028-(08-31|09-0[1-3])$/);
    expect(reached?.soonest !== undefined && reached.soonest < '2028-01-01').toBe(true);
    expect(reached?.latest === undefined || reached.latest > '2030-01-01').toBe(true);
    expect(factValue(point, 'relative-humidity/tolerance-reached') / 86_400 / YEAR_DAYS).toBeCloseTo(1.92, 1);
  });

  it('is not reached by what does not drift', () => {
    const visits = YEARLY.map((visit) => ({ ...visit, readings: [pair(0)] }));
    const fact = factsById(visitedPoint({ visits })).get('relative-humidity/tolerance-reached');
    expect(isKnown(fact)).toBe(false);
    expect(fact?.missing).toBe('not within 10 years');
  });
});

describe('the next check', () => {
  it('NASA-HDBK-8739.19-5: is when the band of the drift reaches the tolerance', () => {
    const point = visitedPoint({ visits: YEARLY });
    const { proposed, reached, drift } = humidityHistory(point);
    expect(proposed).toMatchObject({ ok: true, value: { method: 'variables-data', date: reached?.soonest } });
    const { error, reach } = drift.ok ? driftOn(drift.value, reached?.soonest ?? '') : { error: 0, reach: 0 };
    // The day is a whole one: a day of drift is less than 1e-4.
    expect(Math.abs(error + reach - 0.03)).toBeLessThan(1e-4);
  });

  it('NCSL RP-1 A3 before that: a check within the tolerance keeps the interval', () => {
    const point = visitedPoint({ visits: YEARLY.slice(0, 2) });
    const { proposed } = humidityHistory(point);
    expect(proposed).toMatchObject({ ok: true, value: { method: 'test-interval', date: '2024-09-01' } });
  });

  it('NCSL RP-1 A3: the first check that finds the error beyond the tolerance halves the interval', () => {
    const visits = [{ date: '2026-03-01', readings: [pair(4)] }];
    const { proposed } = humidityHistory(visitedPoint({ visits }));
    expect(proposed).toMatchObject({ ok: true, value: { method: 'test-interval', date: '2026-08-30' } });
  });

  it('is proposed at once where the drift may have left the tolerance at the last visit, with no interval', () => {
    const visits = YEARLY.map((visit, year) => ({ ...visit, readings: [pair(0.9 * year)] }));
    const point = visitedPoint({ visits });
    const { proposed } = humidityHistory(point);
    expect(proposed).toMatchObject({
      ok: true,
      value: { method: 'variables-data', isAtOnce: true, date: '2025-09-01' },
    });
    expect(factsById(point).has('check/proposed-interval')).toBe(false);
  });

  it('is proposed for no point without a plan or a tolerance', () => {
    const unplanned = visitedPoint({ visits: YEARLY, checks: 'method: laboratory' });
    expect(humidityHistory(unplanned).proposed).toEqual({ ok: false, problem: 'no interval of checks is planned' });
  });
});

describe('the planned check', () => {
  it.each([
    ['2025-03-01', '2026-09-01'],
    ['2026-03-01', '2027-03-01'],
  ])('counts from the later of the plan, %s, and the last visit: due on %s', (last, due) => {
    const point = visitedPoint({ visits: YEARLY, checks: `interval: 12 months, last: ${last}` });
    expect(point.checkPlan.due?.due).toBe(due);
  });
});
