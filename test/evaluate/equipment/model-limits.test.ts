import { expect, it } from 'vitest';
import { humidityAtSensor } from '../../../server/src/evaluate/dryness/dryness.ts';
import { humidityProbeFit } from '../../../server/src/evaluate/equipment/model-fit.ts';
import { assessedPoint } from '../assessed-point.ts';

/** What speaks against a model with these data at an unheated point, in a space that says this of itself. */
function objections(model: string, space: string): readonly string[] {
  const {
    humidityProbeModel,
    space: evaluated,
    facts,
  } = assessedPoint({
    space: `{air: {temperature: 20 .. 25 degC, humidity: 30 .. 75 %RH}, ${space}}`,
    point: 'humidity-probe: {model: tried}',
    kit: `dewright: 1\nkit: {id: models}\nhumidity-probes:\n  tried: {${model}}\n`,
  });
  if (humidityProbeModel?.model === undefined || evaluated === undefined) throw new Error('no model or no space');
  const wanted = { heater: false, rise: 0, highestHumidity: facts.get(humidityAtSensor)?.value };
  return humidityProbeFit(humidityProbeModel.model.value, evaluated, wanted).objections;
}

it.each([
  ['flammable-zone-0', 'flammable-zone-1', true],
  ['flammable-zone-1', 'flammable-zone-2', true],
  ['flammable-zone-2', 'flammable-zone-2', true],
  ['flammable-zone-1', 'flammable-zone-0', false],
  ['flammable-zone-2', 'flammable-zone-1', false],
])('Directive 2014/34/EU, Annex I (at second hand): equipment for %s in %s: %s', (certified, zone, isSuitable) => {
  const found = objections(`zones: [${certified}]`, `hazards: [${zone}]`);
  expect(found).toEqual(isSuitable ? [] : [`not certified for ${zone}`]);
});

it('a model without a list withstands nothing and is certified for nothing; a zone is the only hazard that needs it', () => {
  expect(objections('response: 15 s', 'exposure: [ammonia], hazards: [toxic, flammable-zone-2]')).toEqual([
    'does not list ammonia',
    'not certified for flammable-zone-2',
  ]);
});

it.each([
  ['0 .. 100 %RH', []],
  ['30 .. 75 %RH', []],
  ['35 .. 100 %RH', ['made for 35 … 100 %RH']],
  ['0 .. 70 %RH', ['made for 0 … 70 %RH']],
])('a model for %s in air of 30 to 75 %%RH: %j', (range, expected) => {
  expect(objections(`ranges: {relative-humidity: ${range}}`, 'exposure: []')).toEqual(expected);
});
