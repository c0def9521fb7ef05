/** Steps of the handover about what feeds and heats the head, and where the air temperature comes from instead of it. */

import { humidityAtSensor } from '../evaluate/dryness/dryness.ts';
import { riseAsked } from '../evaluate/dryness/limits.ts';
import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ResolvedSource } from '../evaluate/resolved/air-temperature-source.ts';
import { voltageAtProbe } from '../evaluate/supply/facts.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { StepDraft } from './step.ts';
import { cautionOf } from './step-cautions.ts';

export function heaterSteps(view: PointEvaluation): readonly StepDraft[] {
  return [...supplyMeasured(view), ...heaterOn(view), ...riseSeen(view), ...airTemperatureAssigned(view)];
}

/** On a service cable there is no supply to measure yet. */
function supplyMeasured(view: PointEvaluation): readonly StepDraft[] {
  const { facts, point, heater, humidityProbeModel, transmitterModel } = view;
  const voltage = facts.get(voltageAtProbe);
  if (!isKnown(voltage) || point.supply?.value.kind?.value === 'service-cable') return [];
  const atTransmitter = point.transmitter !== undefined;
  const fed = atTransmitter ? transmitterModel?.model?.value : humidityProbeModel?.model?.value;
  const range = fed?.supply?.value.voltage?.value;
  const least = heater.on ? leastForHeater(view) : undefined;
  const wanted = [
    ...(range === undefined
      ? []
      : [`${showQuantity(range.low, 'voltage')} to ${showQuantity(range.high, 'voltage')} are allowed`]),
    ...(least === undefined ? [] : [`the heater needs ${least}`]),
  ];
  return [
    {
      name: 'supply-measured',
      title: 'Supply measured',
      todo: `Measure the voltage at the ${atTransmitter ? 'transmitter' : 'probe'}, at the end of its cable${heater.on ? ', with the heater at work' : ''}.`,
      expect: `It is at least ${showFact(voltage)}, as computed for this cable${wanted.length === 0 ? '' : `; ${wanted.join(', and ')}`}.`,
      facts: [voltage],
      ...cautionOf(view, 'wiring'),
    },
  ];
}

function heaterOn(view: PointEvaluation): readonly StepDraft[] {
  const { heater } = view;
  if (!heater.on) return [];
  const rise =
    heater.rise === undefined
      ? ''
      : `, ${showQuantity(heater.rise.value.value, 'temperature-difference')} above the air`;
  const set = `${heater.mode}${rise}`;
  const least = leastForHeater(view);
  const enough = least === undefined ? '' : `, which has to bring ${least}`;
  return [
    {
      name: 'heater-on',
      title: 'Heater on',
      todo: HEATER_WORDS[heater.located?.value.setAt?.value ?? 'not-told'](set),
      expect: `The instrument shows the heater as ${set}. While the probe hangs on a service cable a notice of low supply is to be expected: it is no fault, and clears on the real supply${enough}.`,
      facts: [],
      ...cautionOf(view, 'heating'),
    },
  ];
}

const HEATER_WORDS: Readonly<Record<'factory' | 'site' | 'not-told', (set: string) => string>> = {
  factory: (set) => `The heater was ordered switched on: see that it is, ${set}.`,
  site: (set) => `Switch the heater on: ${set}.`,
  'not-told': (set) => `Find out whether the heater came switched on, and else switch it on: ${set}.`,
};

function riseSeen(view: PointEvaluation): readonly StepDraft[] {
  const { heater, facts } = view;
  const rise = heater.on ? heater.rise?.value.value : undefined;
  if (rise === undefined) return [];
  const humidity = facts.get(humidityAtSensor);
  const least = broken(riseAsked, view)?.fact;
  const asked = `The head stands ${showQuantity(rise, 'temperature-difference')} above the air`;
  const reached =
    least === undefined ? '' : `, in the fastest air and on the lowest supply no more than ${showFact(least)}`;
  const seen = isKnown(humidity) ? ` The sensor then sees ${showFact(humidity)} at most.` : '';
  return [
    {
      name: 'head-rise-seen',
      title: 'Rise of the head seen',
      todo: 'With the process running and all readings steady, read the temperature of the head beside that of the air.',
      expect: `${asked}${reached}.${seen}`,
      facts: [...(least === undefined ? [] : [least]), ...(isKnown(humidity) ? [humidity] : [])],
    },
  ];
}

/** With the heater on nothing is assigned silently, so that somebody has to do it and look at it. */
function airTemperatureAssigned({ heater, reports }: PointEvaluation): readonly StepDraft[] {
  const needing = reports.flatMap(({ quantity, source }) => {
    const words = sourceWords(source);
    return words === undefined ? [] : [{ title: quantityInfo(quantity).title, words }];
  });
  if (!heater.on || needing.length === 0) return [];
  const sources = [...new Set(needing.map(({ words }) => words))];
  const assigned = sources.map((words) => {
    const titles = needing.filter((each) => each.words === words).map(({ title }) => title);
    return `make ${words} the source of air temperature for the ${titles.join(' and the ')}`;
  });
  return [
    {
      name: 'air-temperature-assigned',
      title: 'Air temperature assigned',
      todo: `In the instrument, ${assigned.join(', and ')}.`,
      expect: `The instrument shows ${sources.join(' and ')} as the source, and the air temperature that it shows is that of the air and not of the warmer head.`,
      facts: [],
    },
  ];
}

/** Undefined where nothing is to be assigned, or nothing there can be. */
function sourceWords(source: ResolvedSource): string | undefined {
  switch (source.kind) {
    case 'air-temperature-probe':
      return 'the air-temperature probe';
    case 'unassigned':
      return source.probeThere ? 'the air-temperature probe' : undefined;
    case 'other-point':
      return `the air-temperature probe of ${source.other.tag}`;
    case 'fixed':
      return `the fixed value ${showQuantity(source.celsius, 'temperature')}`;
    default:
      return undefined;
  }
}

function leastForHeater({ humidityProbeModel }: PointEvaluation): string | undefined {
  const least = humidityProbeModel?.model?.value.heater?.value.minimumVoltage?.value.value;
  return least === undefined ? undefined : showQuantity(least, 'voltage');
}
