/** What is not given although the rest of a file shows that it is meant to be checked, and what could be checked with it. */

import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import { isUnread } from '../../evaluate/facts/unread.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { Located } from '../../model/located.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import type { SiteView } from '../rule.ts';

export interface MissingInput {
  /** The key as seen from the point, space, site or model: `humidity-probe.heater.rise`. */
  readonly key: string;
  /** What could be checked, as a sentence names it: 'the humidity at the heated sensor'. */
  readonly check: string;
}

/** In the order of what matters most. */
export function missingAtPoint(view: PointEvaluation): readonly MissingInput[] {
  return [heaterRise, otherPressure, supplyVoltage, sampleLine, saltCheck, probesApart, registers, tolerance].flatMap(
    (missing) => missing(view),
  );
}

export function missingInSpace(space: SpaceEvaluation, points: readonly PointEvaluation[]): readonly MissingInput[] {
  return [...airSpeed(space, points), ...wallLayers(space)];
}

/** The air around the walls is asked for where a wall or a first phase is there to be compared with it. */
export function missingInHeader({ model, spaces, settings }: SiteView): readonly MissingInput[] {
  const { header } = model;
  if (header === undefined || !isAbsent(header, 'surroundings', settings.surroundings)) return [];
  const missing = (check: string): readonly MissingInput[] => [{ key: 'surroundings', check }];
  if (spaces.some(({ located }) => located.value.wall !== undefined)) return missing('how cold the walls get');
  const phases = spaces.some(({ located }) => located.value.phases !== undefined);
  return phases ? missing('whether a cold head gets wet as its first phase begins') : [];
}

function heaterRise({ heater }: PointEvaluation): readonly MissingInput[] {
  if (!heater.on || !isAbsent(heater.located, 'rise', heater.rise)) return [];
  return [{ key: 'humidity-probe.heater.rise', check: 'the humidity at the heated sensor' }];
}

function otherPressure({ reports }: PointEvaluation): readonly MissingInput[] {
  return reports.flatMap(({ quantity, report }) =>
    quantity === 'dew-point-at' && isAbsent(report, 'at-pressure', report.value.atPressure)
      ? { key: 'reports.dew-point-at.at-pressure', check: 'the dew point at the other pressure' }
      : [],
  );
}

/** Where other reports of the point say how good they must be. */
function tolerance({ reports }: PointEvaluation): readonly MissingInput[] {
  if (!reports.some(({ report }) => report.value.tolerance !== undefined)) return [];
  return reports.flatMap(({ quantity, report }) =>
    isAbsent(report, 'tolerance', report.value.tolerance)
      ? { key: `reports.${quantity}.tolerance`, check: `whether the ${quantityInfo(quantity).title} is good enough` }
      : [],
  );
}

/** A cable is there to be counted. */
function supplyVoltage({ point }: PointEvaluation): readonly MissingInput[] {
  const { supply } = point;
  if (supply?.value.cable === undefined || !isAbsent(supply, 'voltage', supply.value.voltage)) return [];
  return [{ key: 'supply.voltage', check: 'the voltage at the end of the cable' }];
}

function sampleLine({ point }: PointEvaluation): readonly MissingInput[] {
  const mounting = point.humidityProbe?.value.mounting;
  if (mounting?.value.path?.value !== 'sample-line') return [];
  if (!isAbsent(mounting, 'sample-line-temperature', mounting.value.sampleLineTemperature)) return [];
  return [{ key: 'humidity-probe.mounting.sample-line-temperature', check: 'whether the sample line stays dry' }];
}

function saltCheck({ point }: PointEvaluation): readonly MissingInput[] {
  const { checks } = point;
  if (checks?.value.method?.value !== 'saturated-salt') return [];
  const check = 'what the probe should read over its salts';
  return [
    ...(isAbsent(checks, 'salts', checks.value.salts) ? [{ key: 'checks.salts', check }] : []),
    ...(isAbsent(checks, 'at', checks.value.at) ? [{ key: 'checks.at', check }] : []),
  ];
}

/** Where one of distance and position is given, the other is wanted to tell what the heated head adds. */
function probesApart({ point, heater }: PointEvaluation): readonly MissingInput[] {
  const mounting = point.airTemperatureProbe?.value.mounting;
  if (!heater.on || mounting === undefined) return [];
  const { spacing, position } = mounting.value;
  const check = 'how much the heated head warms the air-temperature probe';
  if (spacing !== undefined && isAbsent(mounting, 'position', position)) {
    return [{ key: 'air-temperature-probe.mounting.position', check }];
  }
  if (position !== undefined && isAbsent(mounting, 'spacing', spacing)) {
    return [{ key: 'air-temperature-probe.mounting.spacing', check }];
  }
  return [];
}

function registers({ point, settings }: PointEvaluation): readonly MissingInput[] {
  const usual = settings.header?.defaults?.value.registerFormat;
  return [...(point.signals?.value ?? [])].flatMap(([name, signal]): readonly MissingInput[] => {
    if (signal.value.kind !== 'register') return [];
    const { format = usual, scale } = signal.value;
    const check = `what the register ${name} can hold`;
    if (isAbsent(signal, 'format', format)) return [{ key: `signals.${name}.format`, check }];
    const counts = format !== undefined && format.value !== 'float32';
    return counts && isAbsent(signal, 'scale', scale) ? [{ key: `signals.${name}.scale`, check }] : [];
  });
}

/** What a heater reaches depends on the air that carries its heat away. */
function airSpeed({ phases }: SpaceEvaluation, points: readonly PointEvaluation[]): readonly MissingInput[] {
  const without = phases.find(({ envelope }) => isAbsent(envelope.located, 'speed', envelope.speed));
  if (without === undefined || !points.some(({ heater }) => heater.rise !== undefined)) return [];
  const { phase } = without.envelope;
  return [{ key: phase === undefined ? 'air.speed' : `phases.${phase}.speed`, check: 'what the heater reaches' }];
}

function wallLayers({ located }: SpaceEvaluation): readonly MissingInput[] {
  const { wall } = located.value;
  if (wall === undefined) return [];
  const { thickness, material, insulation, insulationMaterial } = wall.value;
  const check = 'how cold the wall gets';
  return [
    ...(thickness !== undefined && isAbsent(wall, 'material', material) ? [{ key: 'wall.material', check }] : []),
    ...(material !== undefined && isAbsent(wall, 'thickness', thickness) ? [{ key: 'wall.thickness', check }] : []),
    ...(insulation !== undefined && isAbsent(wall, 'insulation-material', insulationMaterial)
      ? [{ key: 'wall.insulation-material', check }]
      : []),
  ];
}

/** Not given at all: a value that cannot be read is missed by nobody. */
function isAbsent(map: Located<unknown> | undefined, key: string, read: unknown): boolean {
  return read === undefined && !isUnread(map, key, read);
}
