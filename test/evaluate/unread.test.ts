import { describe, expect, it } from 'vitest';
import { evaluatedPoint } from './evaluated-site.ts';
import { factsById } from './facts-by-id.ts';

const KILN = '{pressure: 99 kPa, air: {temperature: 60 .. 75 degC, humidity: 60 .. 95 %RH}}';

describe('what cannot be read leaves what depends on it without facts', () => {
  const dryness = ['humidity-at-sensor', 'margin-to-dew-point', 'highest-head-temperature'];

  it.each([
    ['the mode of the heater', KILN, '{model: heated, heater: {mode: always, rise: 8 K}}'],
    ['the heater', KILN, '{model: heated, heater: on}'],
    ['the rise', KILN, '{model: heated, heater: {mode: continuous, rise: 8}}'],
    ['the pressure', '{pressure: 99 bra, air: {temperature: 60 degC, humidity: 60 %RH}}', '{model: plain}'],
    ['the temperature', '{pressure: 99 kPa, air: {temperature: 60, humidity: 60 %RH}}', '{model: plain}'],
  ])('%s', (_, space, probe) => {
    const facts = factsById(evaluatedPoint(space, `{space: room, humidity-probe: ${probe}, reports: {dew-point: {}}}`));
    expect(dryness.filter((id) => facts.has(id))).toEqual([]);
  });

  it('the altitude, where the pressure follows from it', () => {
    const space = '{air: {temperature: 60 degC, humidity: 60 %RH}}';
    const facts = factsById(
      evaluatedPoint(space, '{space: room, humidity-probe: {model: plain}}', 'altitude: 210 miles'),
    );
    expect(facts.size).toBe(0);
  });
});

describe('the source of an air temperature', () => {
  const PROBE = 'air-temperature-probe: {model: slim}';
  const heated = (heater: string) => `humidity-probe: {model: heated, heater: ${heater}}`;
  const on = heated('{mode: continuous, rise: 8 K}');

  it.each([
    ['not given, heater off', 'humidity-probe: {model: plain}', '{}', 'own-head'],
    ['not given, heater on', on, '{}', 'unassigned'],
    ['not given, heater unreadable', heated('{mode: always}'), '{}', 'unread'],
    ['not given, no humidity probe', PROBE, '{}', 'air-temperature-probe'],
    ['unreadable', on, '{air-temperature: 60 kPa}', 'unread'],
    ['the probe, there', `${on}, ${PROBE}`, '{air-temperature: air-temperature-probe}', 'air-temperature-probe'],
    [
      'the probe, there and unreadable',
      `${on}, air-temperature-probe: slim`,
      '{air-temperature: air-temperature-probe}',
      'air-temperature-probe',
    ],
    ['the probe, not there', on, '{air-temperature: air-temperature-probe}', 'no-such-probe'],
    ['the head, heated', on, '{air-temperature: humidity-probe}', 'heated-head'],
    ['the head, not heated', 'humidity-probe: {model: plain}', '{air-temperature: humidity-probe}', 'own-head'],
    ['a point that is not there', on, '{air-temperature: P-2}', 'other-point'],
    ['a point without a probe', on, '{air-temperature: P-1}', 'other-without-probe'],
    ['a fixed value', on, '{air-temperature: 60 degC}', 'fixed'],
  ])('%s', (_, probes, report, kind) => {
    const { reports } = evaluatedPoint(KILN, `{space: room, ${probes}, reports: {relative-humidity: ${report}}}`);
    expect(reports.map(({ source }) => source.kind)).toEqual([kind]);
  });

  it('is not needed for the dew point', () => {
    const { reports } = evaluatedPoint(KILN, `{space: room, ${on}, reports: {dew-point: {}}}`);
    expect(reports.map(({ source }) => source.kind)).toEqual(['not-needed']);
  });
});
