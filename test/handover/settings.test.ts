import { describe, expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { pointSettings } from '../../server/src/handover/point-settings.ts';
import { recordedSettings } from '../../server/src/handover/recorded-setting.ts';
import { settingWords } from '../../server/src/handover/setting-value.ts';

const SITE = `dewright: 1
site: {id: fennmoor, defaults: {loop-on-fault: 21 mA, register-device: 7}}
spaces:
  room: {air: {temperature: 20 .. 30 degC, humidity: 30 .. 60 %RH}}
points:
  P-1:
    space: room
    humidity-probe: {model: hp, serial: A1}
    reports:
      relative-humidity: {tolerance: 3 %RH}
      dew-point: {pressure: 0.5 bar(g)}
    signals:
      AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH}
      AO2: {kind: voltage, quantity: dew-point, span: -20 .. 60 degC, voltage: seven}
      HR40: {kind: register, quantity: dew-point, address: 40, format: int16, scale: 0.01 degC}
    alarms:
      too-wet: {quantity: relative-humidity, above: 78 %RH, delay: 60 s}
`;

/** The settings that a visit has recorded in flow style, beside what the site file says. */
function recorded(settings: string) {
  const workspace = new Workspace();
  const visit = fileUri('/fennmoor/first.dewvisit.yaml');
  workspace.set(fileUri('/fennmoor/fennmoor.dewsite.yaml'), SITE);
  workspace.set(
    visit,
    `dewright: 1\nvisit: {site: fennmoor, date: 2026-09-02}\nsettings:\n  - {point: P-1, ${settings}}\n`,
  );
  const content = workspace.analysis(visit)?.content;
  if (content?.kind !== 'visit' || content.visited.state !== 'found') throw new Error('no site');
  const point = content.visited.site.points.get('P-1');
  const [entry] = content.visit.settings;
  if (point === undefined || entry === undefined) throw new Error('no point');
  return { point, recorded: recordedSettings(entry.value, point) };
}

it('the settings of a point are those of its heater, probes, reports, signals and alarms', () => {
  expect(pointSettings(recorded('heater: off').point).map(({ path }) => path)).toEqual([
    'heater',
    'humidity-probe.serial',
    'relative-humidity.air-temperature',
    'relative-humidity.pressure',
    'relative-humidity.at-pressure',
    'dew-point.air-temperature',
    'dew-point.pressure',
    'dew-point.at-pressure',
    'AO1.quantity',
    'AO1.current',
    'AO1.span',
    'AO1.on-fault',
    'AO2.quantity',
    'AO2.voltage',
    'AO2.span',
    'HR40.quantity',
    'HR40.device',
    'HR40.address',
    'HR40.format',
    'HR40.scale',
    'HR40.byte-order',
    'too-wet.quantity',
    'too-wet.above',
    'too-wet.below',
    'too-wet.clear',
    'too-wet.delay',
  ]);
});

describe('an instrument agrees with the site file', () => {
  it.each([
    ['as a quantity, whatever its unit', 'too-wet.delay: 1 min', true],
    ['as a range', 'AO1.span: 0 .. 100 %RH', true],
    ['as a range that is another', 'AO1.span: 0 .. 80 %RH', false],
    ['in °F where the file has °C', 'AO2.span: -4 .. 140 degF', true],
    ['as a word', 'HR40.format: int16', true],
    ['as a number', 'HR40.address: 41', false],
    ['as the heater that the point does not have', 'heater: off', true],
    ['as a heater that is on all the same', 'heater: continuous', false],
    ['by the built-in currents of a loop', 'AO1.current: 4 .. 20 mA', true],
    ['by what the site has for all', 'HR40.device: 7', true],
    ['by what the site has for all, and differs', 'AO1.on-fault: 3.6 mA', false],
    [
      'by the head that measures the air of an unheated probe',
      'relative-humidity.air-temperature: humidity-probe',
      true,
    ],
    ['by another source', 'relative-humidity.air-temperature: 25 degC', false],
    ['or not: the file says nothing', 'too-wet.clear: 75 %RH', undefined],
    ['or not: the file cannot be read there', 'AO2.voltage: 0 .. 10 V', undefined],
    ['or not: one pressure is against the air, the other is not', 'dew-point.pressure: 1.5 bar', undefined],
  ])('%s: %s', (_, text, agrees) => {
    const [found] = recorded(text).recorded;
    expect(found?.value).toBeDefined();
    expect(found?.compared?.agrees).toBe(agrees);
  });

  it('in the unit of the quantity that the same visit says the signal has', () => {
    const [quantity, span] = recorded('AO1.quantity: dew-point, AO1.span: 0 .. 60 degC').recorded;
    expect(quantity?.compared?.agrees).toBe(false);
    expect(span?.value === undefined ? '' : settingWords(span.value)).toBe('0 … 60 °C');
  });
});

it('a value that cannot be read is told as it would be in the site file', () => {
  const [found] = recorded('AO1.span: 0 .. 100').recorded;
  expect(found?.value).toBeUndefined();
  expect(found?.problems.map(({ rule, sentence }) => `${rule}: ${sentence}`)).toEqual([
    'value-unreadable: “0 .. 100” needs a unit: %RH',
  ]);
});
