import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { evaluatedSpace, there } from '../evaluated-site.ts';
import { factsById } from '../facts-by-id.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

function phaseOf(air: string, pressure?: string) {
  return there(evaluatedSpace(air, pressure).phases[0]);
}

describe('a box that cannot be', () => {
  it('over 100 %RH is clipped there', () => {
    const { impossible, sampled } = phaseOf('{temperature: 60 .. 75 degC, humidity: 60 .. 105 %RH}');
    expect(impossible).toMatchObject({ kind: 'humidity-over-saturation', clipped: { low: 0.6, high: 1 } });
    expect(impossible?.found.value).toBeCloseTo(1.05, 12);
    expect(sampled).toBeUndefined();
  });

  it('with a negative depression is clipped at 0 K', () => {
    const { impossible } = phaseOf('{temperature: 60 .. 75 degC, dew-point-depression: -2 .. 6 K}');
    expect(impossible).toMatchObject({ kind: 'negative-depression', clipped: { low: 0, high: 6 } });
  });

  it('with a dew point above its highest temperature is clipped at that, and at exactly that is possible', () => {
    const { impossible } = phaseOf('{temperature: 60 .. 75 degC, dew-point: 50 .. 75.1 degC}');
    expect(impossible).toMatchObject({ kind: 'dew-point-over-temperature', clipped: { low: 50, high: 75 } });
    expect(phaseOf('{temperature: 60 .. 75 degC, dew-point: 50 .. 75 degC}').impossible).toBeUndefined();
  });

  it('by mixing ratio is clipped just under that of saturated air, 1 % over psychrolib, which takes f = 1', () => {
    const { impossible } = phaseOf('{temperature: 60 .. 75 degC, mixing-ratio: 120 .. 480 g/kg}');
    expect(impossible?.kind).toBe('dew-point-over-temperature');
    const ideal = psychrolib.GetHumRatioFromRelHum(75, 1, 101_325);
    // f − 1 of 0.58 % and 0.02 % of the saturation formulas, times p/(p − e) = 1.61; rounded down to 0.1 g/kg.
    expect((impossible?.clipped?.high ?? 0) / ideal - 1).toBeGreaterThan(0.009);
    expect((impossible?.clipped?.high ?? 0) / ideal - 1).toBeLessThan(0.0105);
  });

  it('with more vapour than pressure is clipped to the share that boiling leaves, above the boiling point only', () => {
    // IAPWS-IF97 table of saturation: 0.2 MPa at 120.21 °C, so that 120.21 °C at 0.1 MPa holds 50 %RH.
    const { impossible } = phaseOf('{temperature: 100 .. 120.21 degC, humidity: 20 .. 60 %RH}', '100 kPa');
    expect(impossible).toMatchObject({ kind: 'vapour-over-pressure', clipped: { low: 0.2, high: 0.5 } });
    expect(phaseOf('{temperature: 80 .. 99 degC, humidity: 20 .. 100 %RH}').impossible).toBeUndefined();
  });

  it('that even its driest air makes impossible has nothing to clip to', () => {
    const { impossible } = phaseOf('{temperature: 60 .. 75 degC, dew-point: 80 .. 85 degC}');
    expect(impossible?.kind).toBe('dew-point-over-temperature');
    expect(impossible?.clipped).toBeUndefined();
  });
});

describe('a box that is cut at saturation', () => {
  it('keeps both ranges with the depression between its low ends and its high ends', () => {
    const { cut } = phaseOf('{temperature: 12 .. 55 degC, dew-point: 10 .. 50 degC}');
    expect(cut?.depression).toEqual({ low: 2, high: 5 });
    expect(cut?.highestDewPoint.value).toBe(50);
    expect(cut?.lowestTemperature.at).toMatchObject({ airCelsius: 12, relativeHumidity: 1 });
  });

  it('has no such depression where its lowest dew point lies above its lowest temperature', () => {
    const { cut } = phaseOf('{temperature: 12 .. 55 degC, dew-point: 20 .. 50 degC}');
    expect(cut).toBeDefined();
    expect(cut?.depression).toBeUndefined();
  });

  it('is not one that just touches saturation', () => {
    expect(phaseOf('{temperature: 50 .. 55 degC, dew-point: 10 .. 50 degC}').cut).toBeUndefined();
  });
});

it('facts of two phases have different ids', () => {
  const facts = factsById(evaluatedSpace('{temperature: 60 .. 75 degC, humidity: 60 .. 105 %RH}'));
  expect([...facts.keys()]).toEqual(['envelope/highest-humidity', 'envelope/humidity-limit']);
});
