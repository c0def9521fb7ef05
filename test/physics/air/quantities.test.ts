import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import type { AirState } from '../../../server/src/physics/air/moist-air.ts';
import {
  absoluteHumidity,
  density,
  dewPoint,
  dewPointAt,
  dewPointDepression,
  frostPoint,
  mixingRatio,
  relativeHumidity,
  relativeHumidityAt,
  relativeHumidityOverIce,
  specificEnthalpy,
  specificHumidity,
  vapourPressureDeficit,
  volumeFraction,
} from '../../../server/src/physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import { saturationPressureOverWater, saturationSlopeOverWater } from '../../../server/src/physics/air/saturation.ts';
import { vapourPressureFromMixingRatio } from '../../../server/src/physics/air/vapour-pressure.ts';
import { relativeDifference, steps } from '../numeric.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const humidAir = (airCelsius: number, humidity: number, pressure = 101_325): AirState => ({
  airCelsius,
  pressure,
  vapourPressure: humidity * saturatedVapourPressure(airCelsius, pressure, 'water'),
});

describe('ASHRAE Fundamentals 2017 ch. 1', () => {
  it.each([
    [-50, 0.0000243, 0.0000001],
    [-20, 0.0006373, 0.0000004],
    [-5, 0.0024863, 0.0000013],
  ])(
    'table 2, saturated over ice, %d °C: mixing ratio %d within 0.05 % and half a digit',
    (airCelsius, published, tolerance) => {
      const vapourPressure = saturatedVapourPressure(airCelsius, 101_325, 'ice');
      expect(Math.abs(mixingRatio({ airCelsius, pressure: 101_325, vapourPressure }) - published)).toBeLessThan(
        tolerance,
      );
    },
  );

  it.each([
    [-50, -50_222],
    [-20, -18_542],
    [-5, 1_164],
  ])('table 2, saturated over ice, %d °C: enthalpy %d J/kg within 80 J/kg', (airCelsius, published) => {
    // The ideal mixture with its round 1006 J/(kg·K) differs from the real-gas table by up to 80 J/kg at −50 °C.
    const vapourPressure = saturatedVapourPressure(airCelsius, 101_325, 'ice');
    expect(Math.abs(specificEnthalpy({ airCelsius, pressure: 101_325, vapourPressure }) - published)).toBeLessThan(80);
  });

  it('table 2, dry air at 25 °C: 25148 J/kg and 0.8443 m³/kg', () => {
    const dry: AirState = { airCelsius: 25, pressure: 101_325, vapourPressure: 0 };
    // 1006 · 25 = 25150; the ideal volume is 0.04 % above the real one (compressibility).
    expect(Math.abs(specificEnthalpy(dry) - 25_148)).toBeLessThan(3);
    expect(relativeDifference(1 / density(dry), 0.8443)).toBeLessThan(5e-4);
  });

  it('example of eq. 30: 30 °C and 0.02 kg/kg are 81316 J/kg', () => {
    const vapourPressure = vapourPressureFromMixingRatio(0.02, 95_461);
    expect(specificEnthalpy({ airCelsius: 30, pressure: 95_461, vapourPressure })).toBeCloseTo(81_316, 6);
  });

  it('3169.7 Pa at 95461 Pa: 0.02136040 kg/kg within 0.002 %, the distance of 0.621957 from 0.621945', () => {
    const ratio = mixingRatio({ airCelsius: 25, pressure: 95_461, vapourPressure: 3169.7 });
    expect(relativeDifference(ratio, 0.0213603998)).toBeLessThan(2.5e-5);
  });

  it('30 °C, 0.02 kg/kg, 95461 Pa: 0.940855 m³ per kg of dry air within 0.01 %', () => {
    const vapourPressure = vapourPressureFromMixingRatio(0.02, 95_461);
    const volume = 1.02 / density({ airCelsius: 30, pressure: 95_461, vapourPressure });
    expect(relativeDifference(volume, 0.940855374)).toBeLessThan(1e-4);
  });
});

it.each([
  [0, 1e5, 0.78846],
  [100, 5e5, 0.26904],
  [90, 1e6, 0.11226],
])(
  'Hyland and Wexler 1983 table 4, saturated air at %d °C and %d Pa: %d m³ per kg of dry air within 0.7 %',
  (airCelsius, pressure, published) => {
    // Volumes are ideal here; with f the error is −0.1 % cold and grows to +0.6 % at 1 MPa.
    const state = humidAir(airCelsius, 1, pressure);
    expect(relativeDifference((1 + mixingRatio(state)) / density(state), published)).toBeLessThan(7e-3);
  },
);

it('CIPM-2007, air density at 20 °C, 101325 Pa, 50 %RH, 400 ppm CO2: 1.1992 kg/m³ (from memory) within 0.05 %', () => {
  expect(relativeDifference(density(humidAir(20, 0.5)), 1.1992)).toBeLessThan(5e-4);
});

describe('against psychrolib, which takes air and vapour as ideal gases (f = 1)', () => {
  const grid = steps(1, 95, 2).flatMap((celsius) => steps(0.1, 1, 0.1).map((humidity) => [celsius, humidity] as const));

  it('mixing ratio: higher by f − 1 of 0.37 to 0.6 %, multiplied by p/(p − e) where vapour is much of the air', () => {
    for (const [celsius, humidity] of grid) {
      const state = humidAir(celsius, humidity);
      const excess = mixingRatio(state) / psychrolib.GetHumRatioFromRelHum(celsius, humidity, 101_325) - 1;
      const gain = state.pressure / (state.pressure - state.vapourPressure);
      // f − 1 is 0.37 to 0.58 %, 0.18 % at 95 °C; the saturation formulas add up to 0.023 %, the molar masses 0.002 %.
      expect(excess, `${celsius} °C, ${humidity}`).toBeGreaterThan(0.0015);
      expect(excess, `${celsius} °C, ${humidity}`).toBeLessThan(0.0064 * gain);
    }
  });

  it('relative humidity from a mixing ratio: lower by the same', () => {
    for (const [celsius, humidity] of grid) {
      const ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, 101_325);
      const state = {
        airCelsius: celsius,
        pressure: 101_325,
        vapourPressure: vapourPressureFromMixingRatio(ratio, 101_325),
      };
      const deficit = 1 - relativeHumidity(state) / humidity;
      expect(deficit).toBeGreaterThan(0.0015);
      expect(deficit).toBeLessThan(0.0062);
    }
  });

  it('dew point from relative humidity: apart by what f changes between air and dew point, at most 0.09 K', () => {
    for (const [celsius, humidity] of grid) {
      const ours = dewPoint(humidAir(celsius, humidity));
      if (!ours.ok || ours.value < 1) continue; // psychrolib goes over to ice there
      const ideal = psychrolib.GetTDewPointFromRelHum(celsius, humidity);
      const factorOf = (at: number): number =>
        saturatedVapourPressure(at, 101_325, 'water') / saturationPressureOverWater(at);
      const risePerKelvin = saturationSlopeOverWater(ours.value) / saturationPressureOverWater(ours.value);
      const shift = (factorOf(celsius) / factorOf(ours.value) - 1) / risePerKelvin;
      // Two saturation formulas, each within 0.023 %, are 0.01 K at 95 °C; psychrolib stops at 0.001 K.
      expect(Math.abs(ours.value - ideal - shift), `${celsius} °C, ${humidity}`).toBeLessThan(0.011);
      // f falls by 0.36 % at most, from 66 to 95 °C, where 4.2 % is 1 K.
      expect(Math.abs(shift)).toBeLessThan(0.09);
    }
  });

  it('enthalpy and specific humidity at the same mixing ratio: to the last digits', () => {
    for (const [celsius, humidity] of grid) {
      const state = humidAir(celsius, humidity);
      const ratio = mixingRatio(state);
      expect(relativeDifference(specificEnthalpy(state), psychrolib.GetMoistAirEnthalpy(celsius, ratio))).toBeLessThan(
        1e-12,
      );
      expect(relativeDifference(specificHumidity(state), psychrolib.GetSpecificHumFromHumRatio(ratio))).toBeLessThan(
        1e-12,
      );
    }
  });

  it('density at the same mixing ratio: within 0.01 %, from the rounded gas constants of the handbook', () => {
    for (const [celsius, humidity] of grid) {
      const state = humidAir(celsius, humidity);
      const expected = psychrolib.GetMoistAirDensity(celsius, mixingRatio(state), 101_325);
      expect(relativeDifference(density(state), expected)).toBeLessThan(1e-4);
    }
  });
});

describe('definitions', () => {
  it('absolute humidity is specific humidity times density', () => {
    const state = humidAir(35, 0.7);
    expect(relativeDifference(absoluteHumidity(state), specificHumidity(state) * density(state))).toBeLessThan(1e-13);
  });

  it('absolute humidity of saturated air at 20 °C: 17.3 g/m³ (common table value, no source) within f and rounding', () => {
    expect(absoluteHumidity(humidAir(20, 1))).toBeGreaterThan(0.01725);
    expect(absoluteHumidity(humidAir(20, 1))).toBeLessThan(0.01742);
  });

  it('the volume fraction of vapour is its share of the pressure', () => {
    expect(volumeFraction({ airCelsius: 80, pressure: 1e5, vapourPressure: 2e4 })).toBe(0.2);
  });

  it('deficit and depression vanish in saturated air', () => {
    const saturated = humidAir(60, 1);
    expect(vapourPressureDeficit(saturated)).toBeCloseTo(0, 8);
    const depression = dewPointDepression(saturated);
    expect(depression.ok && Math.abs(depression.value)).toBeLessThan(1e-7);
  });

  it('at −20 °C saturation over ice is 82.2 %RH over water, the ratio of the two pressures', () => {
    const vapourPressure = saturatedVapourPressure(-20, 101_325, 'ice');
    const state: AirState = { airCelsius: -20, pressure: 101_325, vapourPressure };
    expect(relativeHumidity(state)).toBeCloseTo(0.8226, 3);
    expect(relativeHumidityOverIce(state)).toEqual({ ok: true, value: 1 });
    const point = frostPoint(state);
    expect(point.ok && Math.abs(point.value + 20)).toBeLessThan(1e-7);
  });

  it('above 0.01 °C there is no relative humidity over ice', () => {
    expect(relativeHumidityOverIce(humidAir(5, 0.5))).toMatchObject({ problem: { kind: 'no-ice-at-air-temperature' } });
    expect(relativeHumidityOverIce(humidAir(0.01, 0.5)).ok).toBe(true);
  });
});

describe('a heated sensor', () => {
  it('sees less humidity, and the same dew point', () => {
    const state = humidAir(60, 0.98);
    expect(relativeHumidityAt(state, 60)).toBe(relativeHumidity(state));
    // Saturation pressures of IAPWS SR1-86: 19947.4 Pa at 60 °C, 25040 Pa at 65 °C; f differs by 0.02 %.
    expect(relativeHumidityAt(state, 65)).toBeCloseTo((0.98 * 19947.4) / 25_040, 3);
  });

  it('each 0.1 K of error in the air temperature is about 0.6 %RH near saturation at 20 °C (common practice, no source)', () => {
    const state = humidAir(20, 0.98);
    const error = relativeHumidityAt(state, 20) - relativeHumidityAt(state, 20.1);
    expect(error).toBeGreaterThan(0.0055);
    expect(error).toBeLessThan(0.0065);
  });

  it('condenses where it is colder than the dew point', () => {
    const state = humidAir(40, 0.5);
    const point = dewPoint(state);
    if (!point.ok) throw new Error(point.problem.kind);
    expect(relativeHumidityAt(state, point.value)).toBeCloseTo(1, 8);
    expect(relativeHumidityAt(state, point.value - 1)).toBeGreaterThan(1);
  });
});

describe('dew point at another pressure', () => {
  it('the same pressure leaves it alone', () => {
    const state = humidAir(30, 0.4);
    expect(dewPointAt(state, state.pressure)).toEqual(dewPoint(state));
  });

  it('eight times the pressure raises 10 °C to 45 °C: eight times 1228.1 Pa is es of 45.5 °C, less the rise of f', () => {
    const at = dewPointAt({ airCelsius: 20, pressure: 101_325, vapourPressure: 1.0039 * 1228.11 }, 810_600);
    // IAPWS: 8 · 1228.11 = 9824.9 Pa is 45.49 °C; f of 1.024 against 1.0039 takes off 2 % of pressure, 0.39 K.
    expect(at.ok && Math.abs(at.value - 45.1)).toBeLessThan(0.05);
  });
});
