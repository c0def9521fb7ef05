/** The numbers behind the findings of the corpus, computed anew with published formulas that Dewright does not use. */
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { factsById } from '../evaluate/facts-by-id.ts';
import { readMarks } from '../rules/fixture.ts';
import { analyseCorpusFile, readCorpusFile } from './corpus-files.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const saturation = (celsius: number): number => psychrolib.GetSatVapPres(celsius);

/**
 * psychrolib takes its saturation pressure from the ASHRAE Handbook, within 0.1 % of IAPWS above 0 °C, and no enhancement
 * factor, which near 100 kPa is 0.4 to 0.6 % and cancels in ratios. 0.1 % of it is 0.1 %RH at the most, or 0.02 K.
 */
const HUMIDITY = 0.001;
const KELVIN = 0.02;

interface HandValue {
  readonly what: string;
  readonly file: string;
  readonly point: string;
  readonly fact: string;
  readonly value: number;
  readonly within: number;
}

/** The rise at which `humidity` (fraction) at `celsius` is `limit` at the sensor: halved down to 1e-9 K. */
function riseTo(limit: number, celsius: number, humidity: number): number {
  let [low, high] = [0, 40];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if ((humidity * saturation(celsius)) / saturation(celsius + middle) > limit) low = middle;
    else high = middle;
  }
  return low;
}

/** WMO-No. 8, annex 4.B: saturation over water and over ice below 0 °C, Pa; within 0.6 % down to −45 °C. */
const overWater = (celsius: number): number => 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
const frostPointOf = (pascal: number): number => {
  const logarithm = Math.log(pascal / 611.2);
  return (272.62 * logarithm) / (22.46 - logarithm);
};

/** IEC 60228, class 5: 39.0 ohm/km for 0.5 mm² at 20 °C; copper rises by 0.00393 per kelvin (IEC 60028). Out and back. */
const loopResistance = (metres: number, celsius: number): number => 2 * metres * 0.039 * (1 + 0.00393 * (celsius - 20));

const HAND_VALUES: readonly HandValue[] = [
  {
    what: 'ASHRAE saturation: 80 %RH at 60 °C is 61 %RH at a head of 66 °C',
    file: 'kiln-probe-unassigned',
    point: 'KU-MT-1',
    fact: 'humidity-at-sensor',
    value: (0.8 * saturation(60)) / saturation(66),
    within: HUMIDITY,
  },
  {
    what: 'ASHRAE saturation: 96 %RH at 66 °C needs 4.2 K to be 80 %RH',
    file: 'compost-rise-short',
    point: 'RS-MT-1',
    fact: 'rise-needed',
    value: riseTo(0.8, 66, 0.96),
    within: KELVIN,
  },
  {
    what: 'ASHRAE saturation: 94 %RH at 12 °C is 0.9 K from its dew point',
    file: 'wet-cellar',
    point: 'WC-MT-1',
    fact: 'margin-to-dew-point',
    value: 12 - psychrolib.GetTDewPointFromRelHum(12, 0.94),
    within: KELVIN,
  },
  {
    what: 'ASHRAE saturation: 100 %RH at 58 °C is 69 %RH at a head of 66 °C',
    file: 'tunnel-saturates',
    point: 'SA-MT-1',
    fact: 'humidity-at-sensor',
    value: saturation(58) / saturation(66),
    within: HUMIDITY,
  },
  {
    what: 'ASHRAE saturation: 70 %RH at 33 °C, taken at 37 °C, is 14 %RH too low',
    file: 'prover-fixed-temperature',
    point: 'FX-MT-1',
    fact: 'relative-humidity/fixed-temperature-error',
    value: 0.7 - (0.7 * saturation(33)) / saturation(37),
    within: HUMIDITY,
  },
  {
    what: 'ASHRAE saturation: 93 %RH at 17 °C, taken at a head of 22 °C, is 25 %RH too low',
    file: 'heated-head-as-source',
    point: 'HH-MT-1',
    fact: 'relative-humidity/heated-head-error',
    value: 0.93 - (0.93 * saturation(17)) / saturation(22),
    within: HUMIDITY,
  },
  {
    what: 'ASHRAE saturation: a head of 20 °C is 13.5 K below the dew point of 78 %RH at 38 °C',
    file: 'prover-cold-start',
    point: 'CO-MT-1',
    fact: 'cold-start-margin',
    value: 20 - psychrolib.GetTDewPointFromRelHum(38, 0.78),
    within: KELVIN,
  },
  {
    what: 'ASHRAE saturation: the dew point of 84 %RH at 62 °C is 58.2 °C, above the sample line of 50 °C',
    file: 'mounting',
    point: 'MO-MT-C',
    fact: 'dew-point/highest',
    value: psychrolib.GetTDewPointFromRelHum(62, 0.84),
    within: KELVIN,
  },
  {
    what: 'WMO-No. 8: 60 %RH over water at -20 °C has a frost point of -23.2 °C',
    file: 'frozen-dew-point',
    point: 'FZ-MT-1',
    fact: 'frost-point/lowest',
    value: frostPointOf(0.6 * overWater(-20)),
    within: 0.06, // 0.6 % of the saturation pressure, at 9.6 % per kelvin
  },
  {
    what: 'ASHRAE mixing ratio: 3 kPa less than 98.83 kPa is 14.6 g/kg more at a dew point of 71 °C',
    file: 'hydrogen-stand',
    point: 'HY-MT-1',
    fact: 'mixing-ratio/pressure-effect',
    value:
      psychrolib.GetHumRatioFromVapPres(saturation(71), psychrolib.GetStandardAtmPressure(210) - 3000) -
      psychrolib.GetHumRatioFromVapPres(saturation(71), psychrolib.GetStandardAtmPressure(210)),
    within: 2e-4, // the enhancement factor of 0.5 % that psychrolib leaves out acts about threefold here
  },
  {
    what: 'IEC 60228: 24 V, 300 m of 0.5 mm² at 32 °C and 4.6 W leave 17.6 V',
    file: 'long-cable',
    point: 'LC-MT-A',
    fact: 'voltage-at-probe',
    value: (24 + Math.sqrt(24 ** 2 - 4 * loopResistance(300, 32) * 4.6)) / 2,
    within: 1e-3, // V; the temperature coefficient is rounded in its last digit, 6e-5 of the resistance
  },
  {
    what: 'IEC 60228: 600 m of 0.5 mm² at 32 °C carry no more than 2.9 W from 24 V',
    file: 'long-cable',
    point: 'LC-MT-B',
    fact: 'cable-power-limit',
    value: 24 ** 2 / (4 * loopResistance(600, 32)),
    within: 1e-3, // W; the same
  },
  {
    what: 'OIML R 121: NaCl at 20 °C gives 75.5 %RH',
    file: 'checks',
    point: 'CK-MT-A',
    fact: 'salt/NaCl/expected-reading',
    value: 0.755,
    within: 0.0005, // half of the last digit of the table
  },
  {
    what: 'OIML R 121 and ASHRAE saturation: MgCl2 at 20 °C, read by a head of 25 °C, gives 24.4 %RH',
    file: 'checks',
    point: 'CK-MT-B',
    fact: 'salt/MgCl2/heated-reading',
    value: (0.331 * saturation(20)) / saturation(25),
    within: HUMIDITY,
  },
  {
    what: 'first-order lag, film coefficient after Hilpert (Re 40 to 4000): 6 K/min and 8 s at 1 m/s are 1.1 K at 0.5 m/s',
    file: 'too-slow-too-coarse',
    point: 'TS-MT-1',
    fact: 'relative-humidity/lag-error',
    value: (6 / 60) * 8 * 2 ** 0.466,
    within: 0.06, // 5 %: Churchill and Bernstein are used, which agrees with Hilpert to some percent
  },
  {
    what: 'ISO 6946: 45 K over 1 mm of steel with 1/20 and 0.13 m²·K/W leave 22.5 °C inside',
    file: 'winter-duct',
    point: 'WD-MT-1',
    fact: 'fitting-inner-surface',
    value: 35 - 45 / 20 / (1 / 20 + 0.001 / 50 + 0.13),
    within: 1e-6,
  },
  {
    what: 'film coefficient after Hilpert (Re 4000 to 40 000): 4 W hold a head and its stem 12 K above air of 15 m/s',
    file: 'fast-duct',
    point: 'FD-MT-1',
    fact: 'rise-reachable',
    value: riseInFastAirByHand(),
    within: 1.2, // 10 %: the two correlations differ by as much, and the radiation of the head is left out here
  },
  {
    what: 'JCGM 100 by hand: ± 0.8 %RH (k = 2), 0.5 %RH of drift and ± 0.1 K at 26.7 %RH make ± 0.7 K of dew point',
    file: 'kiln-probe-unassigned',
    point: 'KU-MT-1',
    fact: 'dew-point/expanded-uncertainty',
    value: dewPointUncertaintyByHand(),
    within: 0.02, // the slope of the saturation curve is taken over 1 K
  },
];

/** Air of 60 °C and 35 %RH at a head of 66 °C, whose reading moves by 1 %RH for 1 %RH and its dew point by de/e. */
function dewPointUncertaintyByHand(): number {
  const atSensor = (0.35 * saturation(60)) / saturation(66);
  const dewPoint = psychrolib.GetTDewPointFromRelHum(60, 0.35);
  const slopeAt = (celsius: number): number => Math.log(saturation(celsius + 0.5) / saturation(celsius - 0.5));
  const ofHumidity = Math.hypot(0.008 / 2, 0.005 / Math.sqrt(3)) / atSensor / slopeAt(dewPoint);
  const ofHead = ((0.1 / 2) * slopeAt(66)) / slopeAt(dewPoint);
  return 2 * Math.hypot(ofHumidity, ofHead);
}

/** Head of 12 × 60 mm on a steel tube of 12 × 1 mm, long enough to be taken as endless; air of 55 °C at 15 m/s. */
function riseInFastAirByHand(): number {
  const [conductivity, viscosity, prandtl] = [0.028, 18.6e-6, 0.7]; // Incropera, table A.4, near 330 K
  const nusselt = 0.193 * ((15 * 0.012) / viscosity) ** 0.618 * Math.cbrt(prandtl);
  const film = (nusselt * conductivity) / 0.012;
  const ofHead = film * Math.PI * 0.012 * (0.06 + 0.012 / 4);
  const ofStem = Math.sqrt(film * Math.PI * 0.012 * 17 * Math.PI * 0.001 * 0.011);
  return 4 / (ofHead + ofStem);
}

describe('a number of the corpus agrees with one made by hand', () => {
  it.each(HAND_VALUES)('$what', ({ file, point, fact, value, within }) => {
    const name = `${file}.dewsite.yaml`;
    const { content } = analyseCorpusFile('faulty', name, readMarks(readCorpusFile('faulty', name)).text);
    const computed = content.kind === 'site' ? factsById(content.site.points.get(point)).get(fact)?.value : undefined;
    expect(Math.abs((computed ?? Number.NaN) - value)).toBeLessThan(within);
  });
});
