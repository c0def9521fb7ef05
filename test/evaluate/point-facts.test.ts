import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { relativeDifference } from '../physics/numeric.ts';
import { evaluatedPoint, evaluatedSpace, known } from './evaluated-site.ts';
import { factsById } from './facts-by-id.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const KILN = '{pressure: 99 kPa, air: {temperature: 60 .. 75 degC, humidity: 60 .. 95 %RH}}';
const HEATED = '{model: heated, heater: {mode: continuous, rise: 8 K}}';

function kilnPoint(reports: string, probe = HEATED) {
  return factsById(evaluatedPoint(KILN, `{space: room, humidity-probe: ${probe}, reports: ${reports}}`));
}

describe('a kiln at 60 to 75 °C and 60 to 95 %RH, against psychrolib, which takes f = 1', () => {
  const facts = kilnPoint('{dew-point: {}, mixing-ratio: {}}');
  const fact = (id: string) => known(facts.get(id));
  const wettest = psychrolib.GetVapPresFromRelHum(75, 0.95);

  it('highest humidity at a sensor 8 K above the air: 0.95 es(75 °C)/es(83 °C), 0.1 % more where f falls towards boiling', () => {
    const ideal = (0.95 * psychrolib.GetSatVapPres(75)) / psychrolib.GetSatVapPres(83);
    expect(relativeDifference(fact('humidity-at-sensor').value, ideal)).toBeLessThan(1e-3);
    expect(fact('humidity-at-sensor').at?.airCelsius).toBe(75);
  });

  it('margin of that sensor, least in the coldest air: the dew point within 0.01 K, for f nearly cancels', () => {
    const ideal = 60 + 8 - psychrolib.GetTDewPointFromRelHum(60, 0.95);
    expect(Math.abs(fact('margin-to-dew-point').value - ideal)).toBeLessThan(0.01);
  });

  it('rise needed for 80 %RH: the temperature at which the vapour is at 80 %RH, within 0.02 K for f again', () => {
    const ideal = psychrolib.GetTDewPointFromVapPres(90, wettest / 0.8) - 75;
    expect(Math.abs(fact('rise-needed').value - ideal)).toBeLessThan(0.02);
    expect(fact('rise-to-set').value).toBe(4.5);
  });

  it('highest dew point and mixing ratio: the latter higher by f − 1, at most 0.61 %, times p/(p − e)', () => {
    expect(Math.abs(fact('dew-point/highest').value - psychrolib.GetTDewPointFromRelHum(75, 0.95))).toBeLessThan(0.01);
    const ideal = psychrolib.GetHumRatioFromVapPres(wettest, 99_000);
    const excess = fact('mixing-ratio/highest').value / ideal - 1;
    expect(excess).toBeGreaterThan(0.0015);
    expect(excess).toBeLessThan((0.0061 * 99_000) / (99_000 - wettest));
  });

  it('highest temperature of the head: the hottest air and the rise', () => {
    expect(fact('highest-head-temperature').value).toBe(83);
  });
});

describe('what a wrong air temperature costs the relative humidity, against psychrolib within 0.1 %RH for f', () => {
  const idealFor = (taken: number, celsius: number, humidity: number): number =>
    Math.abs(psychrolib.GetVapPresFromRelHum(celsius, humidity) / psychrolib.GetSatVapPres(taken) - humidity);

  it('a fixed 70 °C is worst at 60 or 75 °C', () => {
    const facts = kilnPoint('{relative-humidity: {air-temperature: 70 degC}}');
    const worst = Math.max(idealFor(70, 60, 0.95), idealFor(70, 75, 0.95));
    expect(Math.abs(known(facts.get('relative-humidity/fixed-temperature-error')).value - worst)).toBeLessThan(1e-3);
  });

  it('a head 8 K above the air is worst in the coldest, wettest air', () => {
    const facts = kilnPoint('{relative-humidity: {air-temperature: humidity-probe}}');
    const error = known(facts.get('relative-humidity/heated-head-error'));
    expect(Math.abs(error.value - idealFor(68, 60, 0.95))).toBeLessThan(1e-3);
    expect(error.at).toMatchObject({ airCelsius: 60 });
  });
});

describe('the pressure of a space', () => {
  it.each([
    [500, 95_461],
    [1000, 89_875],
    [4000, 61_640],
  ])('ASHRAE Fundamentals 2017 ch. 1 table 1: %d m is %d Pa within 1 Pa', (metres, pascal) => {
    const point = evaluatedPoint(
      '{air: {temperature: 20 degC, humidity: 50 %RH}}',
      '{space: room, reports: {mixing-ratio: {}}}',
      `altitude: ${metres} m`,
    );
    expect(Math.abs((point.space?.pressure.low ?? 0) - pascal)).toBeLessThan(1);
    expect(point.space?.pressure.source).toBe('altitude');
  });

  it('a gauge pressure counts from the air pressure of the altitude', () => {
    const { space } = evaluatedPoint(
      '{pressure: 6 bar(g), air: {temperature: 20 degC, humidity: 50 %RH}}',
      '{space: room}',
      'altitude: 500 m',
    );
    expect(Math.abs((space?.pressure.low ?? 0) - 695_461)).toBeLessThan(1);
  });

  it('without one the weather moves the mixing ratio by w·3 kPa/(p − 3 kPa − e), hand-made from W = ε e/(p − e)', () => {
    const facts = factsById(
      evaluatedPoint(
        '{air: {temperature: 20 degC, humidity: 50 %RH}}',
        '{space: room, reports: {mixing-ratio: {}, relative-humidity: {}}}',
      ),
    );
    const ratio = known(facts.get('mixing-ratio/highest'));
    const vapourPressure = (101_325 * ratio.value) / (0.621957 + ratio.value);
    const expected = (ratio.value * 3000) / (101_325 - 3000 - vapourPressure);
    // 0.621957 of CIPM-2007 has six digits.
    expect(relativeDifference(known(facts.get('mixing-ratio/pressure-effect')).value, expected)).toBeLessThan(1e-5);
    expect(facts.has('relative-humidity/pressure-effect')).toBe(false);
  });

  it('a pressure of the report takes the place of the space: W = ε e/(p − e) with both', () => {
    const facts = factsById(
      evaluatedPoint(
        '{air: {temperature: 20 degC, humidity: 50 %RH}}',
        '{space: room, reports: {mixing-ratio: {pressure: 200 kPa}, vapour-pressure: {}}}',
      ),
    );
    const vapourPressure = known(facts.get('vapour-pressure/highest')).value;
    const expected = (0.621957 * vapourPressure) / (200_000 - vapourPressure);
    expect(relativeDifference(known(facts.get('mixing-ratio/highest')).value, expected)).toBeLessThan(1e-5);
    expect(facts.has('mixing-ratio/pressure-effect')).toBe(false);
  });
});

describe('a head that enters a phase cold', () => {
  const facts = (header: string) =>
    factsById(
      evaluatedPoint(
        '{pressure: 99 kPa, phases: {warm-up: {temperature: 20 .. 40 degC, dew-point: 15 .. 18 degC}, drying: {temperature: 50 .. 60 degC, dew-point: 30 .. 45 degC}}}',
        '{space: room, humidity-probe: {model: plain}, reports: {dew-point: {}}}',
        header,
      ),
    );

  it('has the lowest temperature of the phase before: 20 − 45 = −25 K', () => {
    expect(known(facts('surroundings: 5 .. 32 degC').get('cold-start-margin')).value).toBeCloseTo(-25, 9);
    expect(known(facts('surroundings: 5 .. 32 degC').get('cold-start-margin')).at?.phase).toBe('drying');
  });

  it('has the lowest of the surroundings before the first: −20 − 18 = −38 K', () => {
    const found = facts('surroundings: -20 .. 32 degC');
    expect(known(found.get('cold-start-margin')).value).toBeCloseTo(-38, 9);
    expect(known(found.get('cold-start-head')).value).toBe(-20);
    expect(known(found.get('cold-start-dew-point')).value).toBeCloseTo(18, 9);
  });

  it('is not looked at where the space has one envelope', () => {
    expect(kilnPoint('{dew-point: {}}').has('cold-start-margin')).toBe(false);
  });
});

describe('below 0 °C dew point', () => {
  // WMO-No. 8 annex 4.B, the Magnus formulas: −20 °C over water is 125.97 Pa, which over ice is −17.91 °C.
  const MAGNUS_FROST_POINT = -17.91;

  it('the span of a signal from −20 °C gives the frost point −17.9 °C within 0.05 K of the Magnus formulas', () => {
    const facts = factsById(
      evaluatedPoint(
        '{air: {temperature: 20 degC, humidity: 50 %RH}}',
        '{space: room, reports: {dew-point: {}}, signals: {AO1: {kind: current-loop, quantity: dew-point, span: -20 .. 60 degC}}}',
      ),
    );
    // Magnus over supercooled water lies 0.35 % above Murphy and Koop here, which is 0.04 K.
    expect(Math.abs(known(facts.get('signal/AO1/frost-point')).value - MAGNUS_FROST_POINT)).toBeLessThan(0.05);
    expect(facts.has('frost-point/lowest')).toBe(false);
  });

  it('a fact names the formula over supercooled water where its dew point is below, and only there', () => {
    const facts = factsById(
      evaluatedPoint(
        '{air: {temperature: 5 .. 20 degC, dew-point: -4 .. 4 degC}}',
        '{space: room, reports: {dew-point: {}}}',
      ),
    );
    const namesIt = (id: string) =>
      known(facts.get(id)).formulas.some(({ id: formula }) => formula === 'saturation-over-supercooled-water');
    expect([namesIt('dew-point/lowest'), namesIt('dew-point/highest')]).toEqual([true, false]);
  });

  it('a reported dew point that goes there has its frost point beside it', () => {
    const facts = factsById(
      evaluatedPoint(
        '{air: {temperature: -10 .. 5 degC, dew-point: -20 .. -12 degC}}',
        '{space: room, reports: {dew-point: {}}}',
      ),
    );
    expect(Math.abs(known(facts.get('frost-point/lowest')).value - MAGNUS_FROST_POINT)).toBeLessThan(0.05);
  });
});

it('a formula left far beyond its range is named in the notes, and air too hot to compute has no facts', () => {
  const hot = evaluatedSpace('{temperature: 90 .. 130 degC, humidity: 5 .. 20 %RH}');
  expect(hot.phases[0]?.leaves?.outside.formula.id).toBe('enhancement-over-water');
  expect(hot.complete).toBe(true);
  const oven = evaluatedSpace('{temperature: 90 .. 400 degC, mixing-ratio: 5 .. 20 g/kg}');
  expect(oven.phases[0]?.leaves?.outside.formula.id).toBe('saturation-over-water');
  expect(oven.complete).toBe(false);
});
