import { expect, it } from 'vitest';
import { completeExample, type Kind, strictCheck } from './schema-files.ts';

/** What is wrong, in which file, where the complete example is changed to what, and the keyword that refuses it. */
type Row = readonly [what: string, kind: Kind, pointer: string, value: unknown, keyword: string];

const ABSENT = undefined;

const REFUSED_WHERE_CHANGED: readonly Row[] = [
  ['another version', 'site', '/dewright', 2, 'const'],
  ['an id with capitals', 'site', '/site/id', 'Fennmoor', 'pattern'],
  ['kits that are no list', 'site', '/site/kits', 'a.dewkit.yaml', 'type'],
  ['one kit twice', 'site', '/site/kits', ['a', 'a'], 'uniqueItems'],
  ['a coverage factor of zero', 'site', '/site/defaults/coverage', 0, 'exclusiveMinimum'],
  ['an unknown severity', 'site', '/site/rules/still-air', 'info', 'enum'],
  ['a space without phases', 'site', '/spaces/kiln-2/phases', {}, 'minProperties'],
  ['an unknown material', 'site', '/spaces/kiln-2/wall/material', 'tin', 'enum'],
  ['an unknown hazard', 'site', '/spaces/kiln-2/hazards/1', 'noise', 'enum'],
  ['a list for a value with a unit', 'site', '/spaces/kiln-2/gradient', ['0.8 K/m'], 'type'],
  ['a serial number that YAML reads as 71', 'site', '/points/K2-MT-101/humidity-probe/serial', 71, 'type'],
  ['a signal of an unknown kind', 'site', '/points/K2-MT-101/signals/AO1', { kind: 'relay' }, 'discriminator'],
  ['a register above 65535', 'site', '/points/K2-MT-101/signals/HR40/address', 70_000, 'maximum'],
  ['an unknown check method', 'site', '/points/K2-MT-101/checks/method', 'by-eye', 'enum'],
  ['an unknown word for coverage', 'kit', '/humidity-probes/hp-heated/accuracy/0/coverage', 'normal', 'pattern'],
  ['an empty accuracy table', 'kit', '/humidity-probes/hp-heated/accuracy', [], 'minItems'],
  ['a zone without its number', 'kit', '/temperature-probes/tp-slim/zones/0', 'flammable-zone', 'enum'],
  ['an unknown class of accuracy', 'kit', '/temperature-probes/tp-slim/accuracy/class', 'D', 'enum'],
  ['half a probe', 'kit', '/transmitters/tx-two/probes', 1.5, 'type'],
  ['a receiver of no bits', 'kit', '/receivers/plc-ai/bits', 0, 'minimum'],
  ['a step that is perhaps done', 'visit', '/steps/heater-on/done', 'perhaps', 'type'],
  ['a salt check that names no salt', 'visit', '/readings/0/using', 'saturated-salt', 'pattern'],
  ['a setting that is a map', 'visit', '/settings/0/AO1', { span: '0 .. 100 %RH' }, 'type'],
];

const REFUSED_ONE_LEVEL_UP: readonly Row[] = [
  ['no version', 'site', '/dewright', ABSENT, 'required'],
  ['an unknown top-level key', 'site', '/rooms', {}, 'additionalProperties'],
  ['a site without an id', 'site', '/site/id', ABSENT, 'required'],
  ['a space with a blank in its name', 'site', '/spaces/kiln 3', {}, 'propertyNames'],
  ['a space with neither air nor phases', 'site', '/spaces/kiln-2/phases', ABSENT, 'oneOf'],
  ['a space with both air and phases', 'site', '/spaces/kiln-2/air', {}, 'oneOf'],
  ['an envelope with two humidities', 'site', '/spaces/kiln-2/phases/drying/dew-point', '30 degC', 'oneOf'],
  ['an envelope with no humidity', 'site', '/spaces/kiln-2/phases/drying/humidity', ABSENT, 'oneOf'],
  ['an envelope with no temperature', 'site', '/spaces/kiln-2/phases/drying/temperature', ABSENT, 'required'],
  ['a tag with a blank', 'site', '/points/K2 101', {}, 'propertyNames'],
  ['a point without a space', 'site', '/points/K2-MT-101/space', ABSENT, 'required'],
  ['a misspelt key of a point', 'site', '/points/K2-MT-101/sapce', 'kiln-2', 'additionalProperties'],
  ['a heater without a mode', 'site', '/points/K2-MT-101/humidity-probe/heater/mode', ABSENT, 'required'],
  ['an unknown quantity', 'site', '/points/K2-MT-101/reports/humidity', {}, 'propertyNames'],
  ['a signal with no kind', 'site', '/points/K2-MT-101/signals/AO1/kind', ABSENT, 'required'],
  ['a current loop with an address', 'site', '/points/K2-MT-101/signals/AO1/address', 3, 'additionalProperties'],
  ['a voltage without a span', 'site', '/points/K2-MT-101/signals/AO2/span', ABSENT, 'required'],
  ['an alarm without a limit', 'site', '/points/K2-MT-101/alarms/too-wet/above', ABSENT, 'oneOf'],
  ['an alarm with two limits', 'site', '/points/K2-MT-101/alarms/too-wet/below', '20 %RH', 'oneOf'],
  ['checks without an interval', 'site', '/points/K2-MT-101/checks/interval', ABSENT, 'required'],
  ['a cable without a length', 'site', '/points/K2-MT-101/supply/cable/length', ABSENT, 'required'],
  ['an accuracy row of nothing', 'kit', '/humidity-probes/hp-heated/accuracy/0/relative-humidity', ABSENT, 'required'],
  ['a receiver without an input', 'kit', '/receivers/plc-ai/input', ABSENT, 'required'],
  ['a visit without a date', 'visit', '/visit/date', ABSENT, 'required'],
  ['a reading without a reference', 'visit', '/readings/0/reference', ABSENT, 'required'],
  ['a column of an unknown quantity', 'visit', '/log-columns/weight', 'w', 'additionalProperties'],
];

it.each(REFUSED_WHERE_CHANGED)('%s is refused where it stands', (_, kind, pointer, value, keyword) => {
  expect(errorsAfter(kind, pointer, value)).toContainEqual(expect.objectContaining({ keyword, instancePath: pointer }));
});

it.each(REFUSED_ONE_LEVEL_UP)('%s is refused in the map it belongs to', (_, kind, pointer, value, keyword) => {
  const instancePath = pointer.slice(0, pointer.lastIndexOf('/'));
  expect(errorsAfter(kind, pointer, value)).toContainEqual(expect.objectContaining({ keyword, instancePath }));
});

function errorsAfter(kind: Kind, pointer: string, value: unknown): unknown {
  const file = completeExample(kind);
  const keys = pointer.slice(1).split('/');
  const last = keys.pop() ?? '';
  const owner = keys.reduce<object>((map, key) => Reflect.get(map, key), file);
  if (value === ABSENT) Reflect.deleteProperty(owner, last);
  else Reflect.set(owner, last, value);
  const check = strictCheck(kind);
  check(file);
  return check.errors;
}
