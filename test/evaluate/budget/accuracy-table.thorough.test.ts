/**
 * The rows of an accuracy table make the uncertainty jump where the humidity at the sensor passes from one to the next,
 * along a line that may run anyhow through the envelope. What the envelope is told to cost is held against its single
 * states.
 */
import { expect, it } from 'vitest';
import type { QuantityName } from '../../../server/src/quantity/quantities.ts';
import { steps } from '../../physics/numeric.ts';
import { assessedPoint } from '../assessed-point.ts';
import { there } from '../evaluated-site.ts';

interface Case {
  /** Ends of the rows in %RH, and what each states in %RH. */
  readonly table: readonly (readonly [low: number, high: number, accuracy: number])[];
  readonly rise: number;
  readonly temperature: readonly [number, number];
  readonly humidity: readonly [number, number];
  /** A value or a range, as the file writes it. */
  readonly humidityAs: (value: number | string) => string;
}

const CASES: readonly (readonly [string, Case])[] = [
  [
    'by relative humidity, the middle row narrower than the samples are apart',
    {
      table: [
        [0, 55, 4.2],
        [55, 61, 4.9],
        [61, 100, 1.2],
      ],
      rise: 0,
      temperature: [28, 36],
      humidity: [54, 97],
      humidityAs: (value) => `humidity: ${value} %RH`,
    },
  ],
  [
    'by dew point at a heated head',
    {
      table: [
        [0, 27, 0.6],
        [27, 40, 4],
        [40, 100, 2.5],
      ],
      rise: 8,
      temperature: [67, 99],
      humidity: [46, 60],
      humidityAs: (value) => `dew-point: ${value} degC`,
    },
  ],
  [
    'by mixing ratio, cut at saturation',
    {
      table: [
        [0, 43, 3.8],
        [43, 50, 1],
        [50, 100, 4.5],
      ],
      rise: 3,
      temperature: [5, 20],
      humidity: [2, 8],
      humidityAs: (value) => `mixing-ratio: ${value} g/kg`,
    },
  ],
];

const PARTS = 40;
const QUANTITIES: readonly QuantityName[] = ['dew-point', 'mixing-ratio'];

it.each(CASES)('%s: no state of the envelope is less certain than is told of it by 0.1 %', (_, tried) => {
  const { temperature, humidity, humidityAs } = tried;
  const along = ([low, high]: readonly [number, number]) =>
    steps(0, PARTS, 1).map((n) => low + ((high - low) * n) / PARTS);
  const told = budgetsIn(`temperature: ${temperature.join(' .. ')} degC, ${humidityAs(humidity.join(' .. '))}`, tried);
  const each = along(temperature).flatMap((celsius) =>
    along(humidity).map((value) => budgetsIn(`temperature: ${celsius} degC, ${humidityAs(value)}`, tried)),
  );
  for (const quantity of QUANTITIES) {
    // Air that cannot be has none.
    const worst = Math.max(...each.map((budgets) => budgets.get(quantity)?.worst?.expandedUncertainty ?? 0));
    const uncertainty = there(told.get(quantity)?.worst).expandedUncertainty;
    expect(uncertainty, quantity).toBeGreaterThan(worst * 0.999);
    // Between two places of the grid lies a fortieth of the range.
    expect(uncertainty, quantity).toBeLessThan(worst * (1 + 1 / PARTS));
  }
});

function budgetsIn(air: string, { table, rise }: Case) {
  const rows = table.map(
    ([low, high, accuracy]) => `{when: ${low} .. ${high} %RH, relative-humidity: ${accuracy} %RH, coverage: 2}`,
  );
  const heater = rise === 0 ? '' : `, heater: {mode: continuous, rise: ${rise} K}`;
  const reports = QUANTITIES.map((quantity) => `${quantity}: {}`).join(', ');
  return assessedPoint({
    space: `{pressure: 99 kPa, air: {${air}}}`,
    point: `humidity-probe: {model: stepped${heater}}, reports: {${reports}}`,
    kit: `dewright: 1
kit: {id: own, title: Invented}
humidity-probes:
  stepped: {title: Invented, accuracy: [${rows.join(', ')}], head-temperature: 0.1 K, heater: {power: 4 W}}
`,
  }).budgets;
}
