import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { valueIfOk } from '../../../server/src/base/outcome.ts';
import type { Span } from '../../../server/src/base/span.ts';
import type { HumidityKey } from '../../../server/src/evaluate/air/envelope.ts';
import { extremeOf, type SampledEnvelope } from '../../../server/src/evaluate/air/extreme.ts';
import { quantityValue } from '../../../server/src/evaluate/facts/quantity-value.ts';
import { dewPointOfVapour } from '../../../server/src/physics/air/dew-point.ts';
import type { AirState } from '../../../server/src/physics/air/moist-air.ts';
import { dewPoint, relativeHumidity, relativeHumidityAt } from '../../../server/src/physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import { vapourPressureFromMixingRatio } from '../../../server/src/physics/air/vapour-pressure.ts';
import { QUANTITY_NAMES } from '../../../server/src/quantity/quantities.ts';
import { steps } from '../../physics/numeric.ts';
import { evaluatedSpace, there } from '../evaluated-site.ts';

type ValueAt = (state: AirState) => number | undefined;

const HEATED_BY = 8;
const OTHER_PRESSURE = 7e5;

/** Everything that a site is searched for: what the sensor sees, and every quantity. */
const SEARCHED: readonly (readonly [string, ValueAt])[] = [
  ['humidity at the sensor 8 K above the air', (state) => relativeHumidityAt(state, state.airCelsius + HEATED_BY)],
  ['margin to the dew point', (state) => difference(state.airCelsius + HEATED_BY, valueIfOk(dewPoint(state)))],
  [
    'rise needed for 80 %RH',
    (state) => difference(valueIfOk(dewPointOfVapour(state.vapourPressure / 0.8, state.pressure)), state.airCelsius),
  ],
  ...QUANTITY_NAMES.map(
    (name) => [name, (state: AirState) => valueIfOk(quantityValue(name, state, OTHER_PRESSURE))] as const,
  ),
];

function difference(one: number | undefined, other: number | undefined): number | undefined {
  return one === undefined || other === undefined ? undefined : one - other;
}

interface Box {
  readonly temperature: Span;
  readonly key: HumidityKey;
  /** In °C, K, and fractions. */
  readonly humidity: Span;
  readonly pressure: Span;
}

const UNITS = {
  humidity: ['%RH', 100],
  'dew-point': ['degC', 1],
  'dew-point-depression': ['K', 1],
  'mixing-ratio': ['g/kg', 1000],
} as const;

function sampledOf({ temperature, key, humidity, pressure }: Box): SampledEnvelope {
  const [unit, factor] = UNITS[key];
  const air = `{temperature: ${temperature.low} .. ${temperature.high} degC, ${key}: ${humidity.low * factor} .. ${humidity.high * factor} ${unit}}`;
  return there(evaluatedSpace(air, `${pressure.low} .. ${pressure.high} Pa`).phases[0]?.sampled);
}

/** The state of a place in the box, cut at saturation; written apart from what the program does. */
function stateIn(key: HumidityKey, airCelsius: number, humidity: number, pressure: number): AirState {
  const saturated = (celsius: number): number => saturatedVapourPressure(celsius, pressure, 'water');
  const vapourPressure = {
    humidity: humidity * saturated(airCelsius),
    'dew-point': saturated(humidity),
    'dew-point-depression': saturated(airCelsius - humidity),
    'mixing-ratio': vapourPressureFromMixingRatio(humidity, pressure),
  }[key];
  return { airCelsius, pressure, vapourPressure: Math.min(vapourPressure, saturated(airCelsius)) };
}

function grid({ temperature, key, humidity, pressure }: Box, count: number): readonly AirState[] {
  const along = ({ low, high }: Span, parts: number): readonly number[] =>
    low === high ? [low] : steps(0, parts, 1).map((part) => low + ((high - low) * part) / parts);
  return along(pressure, 2).flatMap((pascal) =>
    along(temperature, count).flatMap((celsius) =>
      along(humidity, count).map((value) => stateIn(key, celsius, value, pascal)),
    ),
  );
}

/** The lowest and highest value on a grid, and whether the quantity has a value everywhere on it. */
function rangeOnGrid(states: readonly AirState[], valueAt: ValueAt) {
  let [lowest, highest, everywhere] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, true];
  for (const state of states) {
    const value = valueAt(state);
    if (value === undefined || !Number.isFinite(value)) {
      everywhere = false;
    } else {
      lowest = Math.min(lowest, value);
      highest = Math.max(highest, value);
    }
  }
  // 1e-6 of the largest value; 1e-9 is the noise of the solvers where all values are 0.
  const tolerance = 1e-6 * Math.max(Math.abs(lowest), Math.abs(highest)) + 1e-9;
  return { lowest, highest, everywhere, somewhere: highest >= lowest, tolerance };
}

function insideBox({ temperature, pressure }: Box, state: AirState): boolean {
  const within = (value: number, { low, high }: Span): boolean => value >= low && value <= high;
  return (
    within(state.airCelsius, temperature) && within(state.pressure, pressure) && relativeHumidity(state) <= 1 + 1e-12
  );
}

const SEA_LEVEL: Span = { low: 101_325, high: 101_325 };
const WEATHER: Span = { low: 98_000, high: 104_000 };
const FIXED: readonly (readonly [string, Box])[] = [
  [
    'frost to thaw by relative humidity',
    { temperature: { low: -30, high: 10 }, key: 'humidity', humidity: { low: 0.3, high: 1 }, pressure: SEA_LEVEL },
  ],
  [
    'by dew point, cut',
    { temperature: { low: 10, high: 50 }, key: 'dew-point', humidity: { low: 20, high: 40 }, pressure: SEA_LEVEL },
  ],
  [
    'by dew point, cut just below the hottest air',
    { temperature: { low: 0, high: 80 }, key: 'dew-point', humidity: { low: 4, high: 78 }, pressure: WEATHER },
  ],
  [
    'by depression',
    {
      temperature: { low: 12, high: 55 },
      key: 'dew-point-depression',
      humidity: { low: 0, high: 6 },
      pressure: SEA_LEVEL,
    },
  ],
  [
    'by mixing ratio',
    {
      temperature: { low: 60, high: 90 },
      key: 'mixing-ratio',
      humidity: { low: 0.02, high: 0.12 },
      pressure: SEA_LEVEL,
    },
  ],
  [
    'compressed air by dew point',
    {
      temperature: { low: 5, high: 45 },
      key: 'dew-point',
      humidity: { low: -40, high: 5 },
      pressure: { low: 6e5, high: 9e5 },
    },
  ],
];

describe.each(FIXED)('the extremes over a box, %s', (_, box) => {
  const sampled = sampledOf(box);
  // The corners that the cuts give these boxes lie on the lines of the grid, so that its extremes are the true ones.
  const states = grid(box, box.pressure.low === box.pressure.high ? 200 : 120);

  it.each(SEARCHED)(
    '%s: equal to those of a grid of 200 × 200 or, over pressures, 120 × 120 × 3, within 1e-6',
    (_name, valueAt) => {
      const onGrid = rangeOnGrid(states, valueAt);
      const lowest = extremeOf(sampled, 'lowest', valueAt);
      const highest = extremeOf(sampled, 'highest', valueAt);
      expect(lowest !== undefined && highest !== undefined).toBe(onGrid.somewhere);
      if (lowest === undefined || highest === undefined) return;
      expect(insideBox(box, lowest.state) && insideBox(box, highest.state)).toBe(true);
      expect(lowest.value).toBeLessThan(onGrid.lowest + onGrid.tolerance);
      expect(highest.value).toBeGreaterThan(onGrid.highest - onGrid.tolerance);
      // Where a quantity ends inside the box, at 0.01 °C, the grid does not reach the end and the search does.
      if (!onGrid.everywhere) return;
      expect(lowest.value).toBeGreaterThan(onGrid.lowest - onGrid.tolerance);
      expect(highest.value).toBeLessThan(onGrid.highest + onGrid.tolerance);
    },
  );
});

it('a frost point whose box reaches above the triple point ends there, at 0.01 °C, within 1e-6 K', () => {
  for (const [, box] of FIXED.filter(([name]) => name.startsWith('frost') || name.startsWith('compressed'))) {
    const highest = extremeOf(sampledOf(box), 'highest', (state) => valueIfOk(quantityValue('frost-point', state)));
    expect(Math.abs(there(highest).value - 0.01)).toBeLessThan(1e-6);
  }
});

/** Multiples of a step, as files have them. */
function multiple(step: number, low: number, high: number): fc.Arbitrary<Span> {
  const end = fc.integer({ min: Math.round(low / step), max: Math.round(high / step) });
  return fc.tuple(end, end).map((ends) => ({ low: Math.min(...ends) * step, high: Math.max(...ends) * step }));
}

const HUMIDITIES: Readonly<Record<HumidityKey, fc.Arbitrary<Span>>> = {
  humidity: multiple(0.01, 0.01, 1),
  'dew-point': multiple(0.1, -40, 89),
  'dew-point-depression': multiple(0.1, 0, 40),
  'mixing-ratio': multiple(0.001, 0.001, 0.5),
};

/** Boxes from frost to just under boiling whose wettest air exists at their hottest. */
const ANY_BOX: fc.Arbitrary<Box> = fc
  .constantFrom<HumidityKey>('humidity', 'dew-point', 'dew-point-depression', 'mixing-ratio')
  .chain((key) =>
    fc.record({
      key: fc.constant(key),
      temperature: multiple(0.1, -30, 90),
      humidity: HUMIDITIES[key],
      pressure: multiple(1000, 9e4, 9e5),
    }),
  )
  .filter(({ key, temperature, humidity, pressure }) => {
    if (key === 'dew-point') return humidity.high <= temperature.high;
    const most = saturatedVapourPressure(temperature.high, pressure.high, 'water');
    return key !== 'mixing-ratio' || vapourPressureFromMixingRatio(humidity.high, pressure.high) < most;
  });

it.each(SEARCHED)('%s: no place on a grid over any box beats the worst corner by 1e-6', (_name, valueAt) => {
  fc.assert(
    fc.property(ANY_BOX, (box) => {
      const sampled = sampledOf(box);
      const onGrid = rangeOnGrid(grid(box, 10), valueAt);
      const lowest = extremeOf(sampled, 'lowest', valueAt);
      const highest = extremeOf(sampled, 'highest', valueAt);
      if (lowest === undefined || highest === undefined) return;
      expect(insideBox(box, lowest.state) && insideBox(box, highest.state)).toBe(true);
      expect(lowest.value).toBeLessThan(onGrid.lowest + onGrid.tolerance);
      expect(highest.value).toBeGreaterThan(onGrid.highest - onGrid.tolerance);
    }),
    { numRuns: 40 },
  );
});
