/** Every fact of a point and of a space, in the order in which hovers and JSON list them. */
import { boxFacts, outsideFormula } from './air/envelope-facts.ts';
import { overPressure, pressureFromAltitude, pressureToGive } from './air/pressure-facts.ts';
import type { SpaceEvaluation } from './air/space.ts';
import type { SpaceFact } from './air/space-fact.ts';
import { airTemperatureBudget, airTemperatureCost, airTemperatureError } from './air-temperature/cost.ts';
import { insertionNeeded, insulationNeeded, largestSpacing, spacingNeeded } from './air-temperature/remedies.ts';
import { fixedTemperatureError, heatedHeadError } from './air-temperature/taken-temperature.ts';
import { expandedUncertainty, improvedUncertainty } from './budget/uncertainty-facts.ts';
import { timeToCheck } from './checks/due.ts';
import { expectedReading, heatedReading, saltUncertainty } from './checks/salt-facts.ts';
import { saltPlan } from './checks/salts.ts';
import { coldStartDewPoint, coldStartHead, coldStartMargin } from './dryness/cold-start.ts';
import {
  highestHeadTemperature,
  humidityAtSensor,
  humidityAtUnheatedSensor,
  lowestHumidityAtSensor,
  marginToDewPoint,
  riseNeeded,
  riseToSet,
} from './dryness/dryness.ts';
import { largestRiseToAsk, riseReachable } from './dryness/reachable-rise.ts';
import type { Fact } from './facts/fact.ts';
import { driftInAYear, lastError, proposedInterval, timeToProposedCheck, timeToTolerance } from './history/facts.ts';
import { historiesOf } from './history/history.ts';
import { fittingSurface } from './mounting/fitting-facts.ts';
import { wallOuterSurface, wallSurface } from './mounting/wall-facts.ts';
import type { PointFact } from './resolved/point-fact.ts';
import { highestReported, lowestReported, pressureEffect } from './resolved/report-range.ts';
import type { ResolvedPoint } from './resolved/resolved-point.ts';
import { depressionAtClear, depressionAtLimit } from './signals/alarm-depression.ts';
import {
  clearToSet,
  falseAlarm,
  guardBandedAlarmLimit,
  leastHysteresis,
  missedAlarm,
  uncertaintyNearLimit,
} from './signals/alarm-facts.ts';
import { faultCurrent } from './signals/fault-level.ts';
import { alarmFrostPoint, signalFrostPoint } from './signals/frost-point.ts';
import { highestCarried, lowestCarried, oneCount, resolutionError, spanUsed } from './signals/signal-facts.ts';
import { cablePowerLimit, conductorNeeded, supplyPower, voltageAtProbe } from './supply/facts.ts';
import { largestLoopLoad, loopVoltageLeft } from './supply/loop-facts.ts';

/** Those that the point has, of all that there are. */
export function factsOfPoint(point: ResolvedPoint): readonly Fact[] {
  return keysOfPoint(point).flatMap((key) => point.facts.get(key) ?? []);
}

/** Those that the space has. What its envelopes make of each quantity is asked one by one. */
export function factsOfSpace(space: SpaceEvaluation): readonly Fact[] {
  return keysOfSpace(space).flatMap((key) => space.facts.get(key) ?? []);
}

export function keysOfSpace({ phases }: SpaceEvaluation): readonly SpaceFact[] {
  return [
    ...phases.flatMap(({ envelope: { phase } }) => [
      ...Object.values(boxFacts).map((fact) => fact(phase)),
      outsideFormula(phase),
    ]),
    pressureFromAltitude,
    pressureToGive,
    overPressure,
    ...Object.values(wallSurface),
    wallOuterSurface,
  ];
}

export function keysOfPoint(point: ResolvedPoint): readonly PointFact[] {
  const { reports } = point;
  const quantities = reports.map(({ quantity }) => quantity);
  return [
    ...DRYNESS,
    ...quantities.flatMap((quantity) => [
      lowestReported(quantity),
      highestReported(quantity),
      fixedTemperatureError(quantity),
      heatedHeadError(quantity),
      pressureEffect(quantity),
    ]),
    ...(quantities.includes('dew-point') && !quantities.includes('frost-point') ? [lowestReported('frost-point')] : []),
    ...frostPointsOf(point),
    ...installationOf(point),
    ...quantities.flatMap((quantity) => [
      airTemperatureBudget(quantity),
      airTemperatureError['stem-conduction'](quantity),
      airTemperatureCost['stem-conduction'](quantity),
      insertionNeeded(quantity),
      insulationNeeded(quantity),
      airTemperatureError.lag(quantity),
      airTemperatureCost.lag(quantity),
      airTemperatureError['head-warming'](quantity),
      airTemperatureCost['head-warming'](quantity),
      spacingNeeded(quantity),
      airTemperatureError.gradient(quantity),
      airTemperatureCost.gradient(quantity),
      largestSpacing(quantity),
    ]),
    ...quantities.flatMap((quantity) => [expandedUncertainty(quantity), improvedUncertainty(quantity)]),
    ...signalsOf(point),
    ...alarmsOf(point),
    ...checksOf(point),
    ...[...historiesOf(point).keys()].flatMap((quantity) => [
      lastError(quantity),
      driftInAYear(quantity),
      timeToTolerance(quantity),
    ]),
    timeToProposedCheck,
    proposedInterval,
  ];
}

const DRYNESS: readonly PointFact[] = [
  humidityAtUnheatedSensor,
  coldStartMargin,
  coldStartHead,
  coldStartDewPoint,
  riseNeeded,
  riseToSet,
  humidityAtSensor,
  marginToDewPoint,
  highestHeadTemperature,
];

function namesOf(map: { readonly value: ReadonlyMap<string, unknown> } | undefined): readonly string[] {
  return [...(map?.value.keys() ?? [])];
}

function frostPointsOf({ point }: ResolvedPoint): readonly PointFact[] {
  return [...namesOf(point.signals).map(signalFrostPoint), ...namesOf(point.alarms).map(alarmFrostPoint)];
}

function installationOf({ point }: ResolvedPoint): readonly PointFact[] {
  return [
    voltageAtProbe,
    supplyPower,
    cablePowerLimit,
    conductorNeeded,
    ...namesOf(point.signals).flatMap((name) => [loopVoltageLeft(name), largestLoopLoad(name)]),
    riseReachable,
    largestRiseToAsk,
    ...Object.values(fittingSurface),
  ];
}

function signalsOf({ point }: ResolvedPoint): readonly PointFact[] {
  return namesOf(point.signals).flatMap((name) => [
    oneCount(name),
    resolutionError(name),
    lowestCarried(name),
    highestCarried(name),
    spanUsed(name),
    faultCurrent(name),
  ]);
}

function alarmsOf({ point }: ResolvedPoint): readonly PointFact[] {
  return namesOf(point.alarms).flatMap((name) => [
    uncertaintyNearLimit(name),
    leastHysteresis(name),
    clearToSet(name),
    depressionAtLimit(name),
    depressionAtClear(name),
    missedAlarm(name),
    falseAlarm(name),
    guardBandedAlarmLimit(name),
  ]);
}

function checksOf(point: ResolvedPoint): readonly PointFact[] {
  const plan = saltPlan(point);
  const salts = plan?.salts ?? [];
  return [
    timeToCheck,
    ...salts.flatMap(({ id }) => [expectedReading(id), saltUncertainty(id), heatedReading(id)]),
    ...(plan?.working === undefined ? [] : [lowestHumidityAtSensor]),
  ];
}
