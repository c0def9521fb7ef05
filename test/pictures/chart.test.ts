import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { writeMarkup } from '../../server/src/base/markup.ts';
import type { SpaceEvaluation } from '../../server/src/evaluate/air/space.ts';
import { showCorner, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { recordingBasis } from '../../server/src/evaluate/recorded/basis.ts';
import { outsideWords } from '../../server/src/evaluate/recorded/words.ts';
import { lineOfQuantity } from '../../server/src/pictures/chart/curves.ts';
import type { ChartSubject } from '../../server/src/pictures/chart/item.ts';
import { chartPlane, moistAirChart } from '../../server/src/pictures/chart/moist-air-chart.ts';
import { spotsOfOutline } from '../../server/src/pictures/chart/phases.ts';
import type { ChartPlane, HumidityAxis } from '../../server/src/pictures/chart/plane.ts';
import { readChart } from '../../server/src/pictures/chart/reading.ts';
import { placeOn, ticksBetween, valueAt } from '../../server/src/pictures/scale.ts';
import type { XY } from '../../server/src/pictures/svg.ts';
import { RecordingFold } from '../../server/src/recording/fold/recording-fold.ts';
import { evaluatedPoint, evaluatedSpace, known, there } from '../evaluate/evaluated-site.ts';
import { factsById } from '../evaluate/facts-by-id.ts';

const PLACE = { file: 'file:///fennmoor.dewsite.yaml', start: 7 };
const ROOM = '{ temperature: 5 .. 60 degC, humidity: 10 .. 90 %RH }';

function subjectOf(space: SpaceEvaluation, points: ChartSubject['points'] = []): ChartSubject {
  const phases = space.phases.filter(({ sampled }) => sampled !== undefined);
  return { space, points, phases, here: undefined, recordings: [], placeOf: () => PLACE };
}

function planeOf(axis: HumidityAxis, air = ROOM): ChartPlane {
  return there(chartPlane(axis, subjectOf(evaluatedSpace(air))));
}

/** What a drawn line says at a temperature, in straight lines between its points. */
function contentAt({ temperature, humidity }: ChartPlane, line: readonly XY[], celsius: number): number {
  const x = placeOn(temperature, celsius);
  const next = line.findIndex(([at]) => at >= x);
  const [[fromX, fromY], [toX, toY]] = [there(line[next - 1]), there(line[next])];
  return valueAt(humidity, fromY + ((x - fromX) / (toX - fromX)) * (toY - fromY));
}

describe('the lines of the moist-air chart', () => {
  const plane = planeOf('mixing-ratio');
  const saturation = lineOfQuantity(plane, 'relative-humidity', 1);

  it.each([
    // ASHRAE Fundamentals 2017 ch. 1 table 3 (saturation pressure), with the enhancement factors of Greenspan 1976.
    [20, 2339.2],
    [25, 3169.7],
    [40, 7384.4],
  ])('ASHRAE 2017 table 3: the air saturated at %d °C lies on the line of saturation', (celsius, pascal) => {
    const withoutEnhancement = (0.621945 * pascal) / (101325 - pascal);
    // The enhancement factor, 1.004 to 1.0045 there, makes it 0.4 to 0.5 %, divided by 1 − e/p up to 0.55 %, more; the straight lines
    // between points that are 0.8 K apart add less than 0.03 %.
    const ratio = contentAt(plane, saturation, celsius) / withoutEnhancement;
    expect(ratio).toBeGreaterThan(1.0039);
    expect(ratio).toBeLessThan(1.0058);
  });

  it.each([0.2, 0.5, 0.8])('psychrolib: the line of %d passes where 25 °C has that relative humidity', (fraction) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const line = lineOfQuantity(plane, 'relative-humidity', fraction);
    const expected = psychrolib.GetHumRatioFromRelHum(25, fraction, 101325); // takes the enhancement factor as 1
    const ratio = contentAt(plane, line, 25) / expected;
    expect(ratio).toBeGreaterThan(1.0039);
    expect(ratio).toBeLessThan(1.0052);
  });

  it('over dew points the air is saturated where dew point and temperature are the same', () => {
    const overDewPoint = planeOf('dew-point');
    const line = lineOfQuantity(overDewPoint, 'relative-humidity', 1);
    for (const celsius of [10, 30, 55]) expect(contentAt(overDewPoint, line, celsius)).toBeCloseTo(celsius, 6);
  });

  it('the marks of an axis are round', () => {
    expect(ticksBetween(-3, 52, 'temperature', 8)).toEqual([0, 10, 20, 30, 40, 50]);
    expect(ticksBetween(0, 0.013, 'mixing-ratio', 8).map((value) => Math.round(value * 1e6))).toEqual([
      0, 2000, 4000, 6000, 8000, 10_000, 12_000,
    ]);
  });
});

describe('the envelope of a phase', () => {
  const plane = planeOf('dew-point', '{ temperature: 20 .. 50 degC, dew-point: 15 .. 40 degC }');
  const space = evaluatedSpace('{ temperature: 20 .. 50 degC, dew-point: 15 .. 40 degC }');
  const outline = spotsOfOutline(plane, there(space.phases[0]).envelope).map(([x, y]) => ({
    celsius: valueAt(plane.temperature, x),
    dewPoint: valueAt(plane.humidity, y),
  }));

  it('is cut off at saturation', () => {
    for (const { celsius, dewPoint } of outline) expect(dewPoint - celsius).toBeLessThan(1e-6);
  });

  it('has its corners where the file gives them, and where the cut makes new ones', () => {
    for (const [celsius, dewPoint] of [
      [20, 15],
      [50, 15],
      [50, 40],
      [40, 40],
      [20, 20],
    ] as const) {
      const nearest = Math.min(...outline.map((spot) => Math.hypot(spot.celsius - celsius, spot.dewPoint - dewPoint)));
      expect(nearest, `${celsius} °C, dew point ${dewPoint} °C`).toBeLessThan(1e-6);
    }
  });
});

describe('the reading of a spot', () => {
  const plane = planeOf('mixing-ratio');
  const spot = (celsius: number, mixingRatio: number): XY => [
    placeOn(plane.temperature, celsius),
    placeOn(plane.humidity, mixingRatio),
  ];

  it('ASHRAE 2017 ch. 1 example 1: 40 °C and 0.0065 kg/kg, within what its chart can be read to', () => {
    const reading = there(readChart(plane, spot(40, 0.0065)));
    const numberOf = (name: string) => Number(new RegExp(`${name} (-?[\\d.]+)`).exec(reading)?.[1]);
    expect(reading).toContain('air temperature 40 °C');
    expect(reading).toContain('mixing ratio 6.5 g/kg');
    expect(Math.abs(numberOf('relative humidity') - 14)).toBeLessThan(0.5);
    expect(Math.abs(numberOf('dew point') - 7)).toBeLessThan(1);
    expect(Math.abs(numberOf('wet-bulb temperature') - 20)).toBeLessThan(0.5);
    // The example reads 56.7 kJ/kg at a wet bulb of 20 °C; 0.0001 kg/kg, to which it rounds the content, are 0.26 kJ/kg.
    expect(Math.abs(numberOf('specific enthalpy') - 56.7)).toBeLessThan(0.3);
  });

  it('says why there is no such air', () => {
    expect(readChart(plane, spot(10, 0.05))).toMatch(/^air temperature 10 °C, mixing ratio 50 g\/kg: .* 100 %RH\.$/);
  });

  it('says nothing beside the plane', () => {
    expect(readChart(plane, [1, 1])).toBeUndefined();
    expect(readChart(plane, [Number.NaN, Number.NaN])).toBeUndefined();
  });
});

describe('an envelope at the edge of what can be drawn', () => {
  it.each([
    '{ temperature: 20 .. 20 degC, humidity: 0 .. 0 %RH }',
    '{ temperature: 20 .. 20 degC, humidity: 100 .. 100 %RH }',
    '{ temperature: -60 .. -40 degC, humidity: 0 .. 100 %RH }',
    '{ temperature: 95 .. 150 degC, humidity: 0 .. 20 %RH }',
    '{ temperature: 90 .. 100 degC, dew-point: 85 .. 99.9 degC }',
    '{ temperature: 5 .. 10 degC, dew-point: 20 .. 30 degC }',
    '{ temperature: 80 .. 120 degC, mixing-ratio: 0 .. 900 g/kg }',
    '{ temperature: 60 .. 61 degC, dew-point-depression: 0 .. 0 K }',
  ])('%s is drawn with numbers alone, or not at all', (air) => {
    const subject = subjectOf(evaluatedSpace(air));
    for (const axis of ['mixing-ratio', 'dew-point'] as const) {
      const plane = chartPlane(axis, subject);
      expect(plane === undefined).toBe(subject.phases.length === 0); // such air is impossible
      const text = plane === undefined ? '' : writeMarkup(moistAirChart(plane, subject));
      expect(text).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});

describe('points that are alike', () => {
  const point = evaluatedPoint(
    '{ pressure: 99 kPa, air: { temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH } }',
    `
    space: room
    humidity-probe: { model: hp }
    reports: { relative-humidity: { tolerance: 3 %RH } }
    alarms: { too-wet: { quantity: relative-humidity, above: 80 %RH } }`,
  );

  it('share their marks and their rows, and many are told by their number', () => {
    const points = ['A', 'B', 'C', 'D'].map((tag) => ({ ...point, tag }));
    const subject = subjectOf(there(point.space), points);
    const text = writeMarkup(moistAirChart(there(chartPlane('mixing-ratio', subject)), subject));
    expect(text.match(/<text[^>]*>4 points: sensor at/g)).toHaveLength(1);
    expect(text.match(/<text[^>]*>4 points, alarm too-wet: relative humidity above 80 %RH</g)).toHaveLength(1);
  });
});

describe('a recording', () => {
  const space = evaluatedSpace('{ temperature: 20 .. 30 degC, humidity: 40 .. 60 %RH }');
  const basis = there(recordingBasis(space, []));
  const summing = new RecordingFold(basis, 'dew-point', 'zoned');
  // One row every 10 min: an hour at 25 °C and a dew point of 15 °C, then half an hour at 40 and 15 °C.
  const times = Float64Array.from({ length: 10 }, (_, row) => row * 600);
  summing.add({
    time: times,
    airCelsius: times.map((time) => (time < 3600 ? 25.1 : 40.1)),
    humidity: times.map(() => 15.1),
    pressure: undefined,
    speed: undefined,
  });
  const summary = there(summing.finish([], 0));
  const subject = { ...subjectOf(space), recordings: [{ log: 'logs/<room>.csv', summary, place: PLACE }] };
  const plane = there(chartPlane('dew-point', subject));
  const text = writeMarkup(moistAirChart(plane, subject));

  it('is shaded where the air was, the more the longer, and widens the plane', () => {
    const shades = [...text.matchAll(/<path d="(M[^"]+)" fill-opacity="([\d.]+)"/g)].map(([, path = '', shade]) => {
      const [x = 0, y = 0] = (path.match(/[\d.]+/g) ?? []).map(Number);
      const corner = [valueAt(plane.temperature, x), valueAt(plane.humidity, y)].map(
        (value) => Math.round(value * 10) / 10,
      );
      return { corner, shade: Number(shade) };
    });
    const [away, steady] = [there(shades[0]), there(shades[1])];
    expect([away.corner, steady.corner]).toEqual([
      [40, 15],
      [25, 15],
    ]); // the lower edges of cells of 0.5 K
    expect(away.shade).toBeLessThan(steady.shade);
  });

  it('is told in its own words, escaped', () => {
    expect(text).toContain('recorded in logs/&lt;room&gt;.csv');
    expect(text).toContain(outsideWords(summary));
  });
});

describe('what the chart says of its points', () => {
  const point = evaluatedPoint(
    '{ title: "</text><script>alert(1)</script>", pressure: 99 kPa, air: { temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH } }',
    `
    space: room
    humidity-probe: { model: hp, heater: { mode: continuous, rise: 8 K } }
    reports: { relative-humidity: { tolerance: 3 %RH } }
    alarms: { '"><b>': { quantity: relative-humidity, above: 95 %RH } }
    checks: { method: saturated-salt, salts: [NaCl], at: 25 degC }`,
  );
  const subject = subjectOf(there(point.space), [point]);
  const text = writeMarkup(moistAirChart(there(chartPlane('mixing-ratio', subject)), subject));

  it('is what the facts say, through the one formatter', () => {
    const humidity = known(factsById(point).get('humidity-at-sensor'));
    expect(text).toContain(
      `P-1: sensor at ${showFact(humidity)} at the most, heated by 8 K, at ${showCorner(there(humidity.at))}`,
    );
    expect(text).toContain('check over NaCl: 75.3 %RH at 25 °C'); // Greenspan 1977 table 2
    expect(text).toContain('limit of a heated sensor 80 %RH');
  });

  it('has everything from the file escaped', () => {
    expect(text).toContain('&lt;/text&gt;&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(text).toContain('alarm &quot;&gt;&lt;b&gt;: relative humidity above 95 %RH');
    expect(text).not.toMatch(/<script|<b>/);
  });

  it('leads to its places', () => {
    expect(text.match(/data-file="file:\/\/\/fennmoor\.dewsite\.yaml" data-start="7"/g)?.length).toBeGreaterThanOrEqual(
      4,
    );
  });
});
