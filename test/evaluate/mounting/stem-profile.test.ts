import { describe, expect, it } from 'vitest';
import { type StemName, stemProfile } from '../../../server/src/evaluate/mounting/stem-profile.ts';
import type { PointEvaluation } from '../../../server/src/evaluate/point.ts';
import { known, there } from '../evaluated-site.ts';
import { factsById } from '../facts-by-id.ts';
import { installedPoint } from '../installed-point.ts';

const KILN =
  '{air: {temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH, speed: 2 .. 4 m/s}, wall: {thickness: 1.5 mm, material: stainless-steel, insulation: 80 mm, insulation-material: mineral-wool}}';

function kilnPoint(heater: string): PointEvaluation {
  return installedPoint({
    space: KILN,
    point: `humidity-probe: {model: heated, heater: ${heater}, mounting: {insertion: 90 mm, insulation: 25 mm}},
      air-temperature-probe: {model: slim, mounting: {insertion: 60 mm, spacing: 120 mm, position: below}},
      reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: 3 %RH}}`,
  });
}

function profileAt(point: PointEvaluation, name: StemName, factId: string) {
  const at = there(known(factsById(point).get(factId)).at);
  const profile = stemProfile(point, there(point.space), name, at);
  if (!profile.ok) throw new Error(profile.problem);
  return { at, profile: profile.value };
}

describe('the temperature along a stem', () => {
  it('of the air-temperature probe ends at the error that the fact of its report states', () => {
    const point = kilnPoint('{mode: continuous, rise: 8 K}');
    const id = 'relative-humidity/stem-conduction-error';
    const { at, profile } = profileAt(point, 'air-temperature-probe', id);
    expect(at.airCelsius - profile.celsiusAt(0.06)).toBeCloseTo(known(factsById(point).get(id)).value, 9);
  });

  it('of the humidity probe starts at the fitting, and ends at the head where that is heated', () => {
    const heated = profileAt(kilnPoint('{mode: continuous, rise: 8 K}'), 'humidity-probe', 'fitting-margin');
    const fitting = known(factsById(kilnPoint('{mode: off}')).get('fitting-inner-surface')).value;
    expect(heated.profile.celsiusAt(0)).toBeCloseTo(fitting, 9);
    expect(heated.profile.length).toBeCloseTo(0.03, 12);
    expect(heated.profile.celsiusAt(0.03)).toBeCloseTo(86, 9);
    const unheated = profileAt(kilnPoint('{mode: off}'), 'humidity-probe', 'fitting-margin').profile;
    expect(unheated.length).toBeCloseTo(0.09, 12);
    expect(unheated.headCelsius).toBeUndefined();
    expect(unheated.celsiusAt(0.09)).toBeLessThan(78);
  });

  it('is not told while the rise of the heater is not known', () => {
    const point = kilnPoint('{mode: continuous}');
    const at = there(known(factsById(point).get('fitting-margin')).at);
    expect(stemProfile(point, there(point.space), 'humidity-probe', at)).toEqual({
      ok: false,
      problem: 'the rise of the heater is not known',
    });
  });
});
