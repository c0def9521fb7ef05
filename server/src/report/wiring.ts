/** How a point is fed and connected: supply, analogue outputs, the map of its registers, alarms. */

import type { PointEvaluation } from '../evaluate/point.ts';
import { analogueRange } from '../evaluate/resolved/signal-use.ts';
import { falseAlarm, missedAlarm } from '../evaluate/signals/alarm-facts.ts';
import { oneCount } from '../evaluate/signals/signal-facts.ts';
import { voltageAtProbe } from '../evaluate/supply/facts.ts';
import type { Located } from '../model/located.ts';
import type { CurrentLoopSignal, RegisterSignal, Signal, VoltageSignal } from '../model/model-types.generated.ts';
import { showRange } from '../quantity/format-quantity.ts';
import {
  type Block,
  factText,
  listed,
  NOTHING,
  named,
  nameTable,
  paragraph,
  stated,
  statedWord,
  type Text,
  table,
  words,
} from './document.ts';

export function wiringBlocks(point: PointEvaluation): readonly Block[] {
  const tables = [...supplyTable(point), ...analogueTable(point), ...registerTable(point), ...alarmTable(point)];
  return tables.length === 0 ? [paragraph('The file says nothing of it.')] : tables;
}

function supplyTable({ tag, point, facts }: PointEvaluation): readonly Block[] {
  const supply = point.supply?.value;
  if (supply === undefined) return [];
  return nameTable('Supply', [
    ['Kind', supply.kind === undefined ? ['installed'] : statedWord(supply.kind)],
    ['Voltage at the near end', stated(supply.voltage)],
    ['Cable', listed(named('length', supply.cable?.value.length), named('conductor', supply.cable?.value.conductor))],
    ['Least voltage at its far end', factText(tag, facts.get(voltageAtProbe))],
  ]);
}

type AnalogueSignal = CurrentLoopSignal | VoltageSignal;

function analogueTable({ point, tag, facts, settings }: PointEvaluation): readonly Block[] {
  const defaults = settings.header?.defaults?.value;
  const rows = [...(point.signals?.value ?? [])].flatMap(([name, located]) =>
    located.value.kind === 'register' ? [] : [{ name, located, signal: located.value }],
  );
  const ends = (located: Located<Signal>): Text => {
    const range = analogueRange({ located });
    const dimension = located.value.kind === 'voltage' ? 'voltage' : 'current';
    return range === undefined ? NOTHING : [{ kind: 'stated', text: showRange(range.low, range.high, dimension) }];
  };
  const loop = (signal: AnalogueSignal): Text =>
    signal.kind === 'voltage'
      ? listed()
      : listed(
          named('load', signal.load ?? defaults?.loopLoad),
          named('on fault', signal.onFault ?? defaults?.loopOnFault),
        );
  return table(
    'Analogue outputs',
    ['output', 'quantity', 'signal', 'span', 'loop', 'read by', 'one count'],
    rows.map(({ name, located, signal }) => [
      [words(name)],
      statedWord(signal.quantity),
      ends(located),
      stated(signal.span),
      loop(signal),
      stated(signal.receiver ?? defaults?.receiver),
      factText(tag, facts.get(oneCount(name))),
    ]),
  );
}

function registerTable({ point, tag, facts, settings }: PointEvaluation): readonly Block[] {
  const defaults = settings.header?.defaults?.value;
  const rows = [...(point.signals?.value ?? [])].flatMap(([name, { value: signal }]) =>
    signal.kind === 'register' ? [[name, signal] as const] : [],
  );
  const direction = ({ write }: RegisterSignal): string =>
    write?.value === true ? 'written by the controller' : 'read';
  return table(
    'Registers',
    ['register', 'quantity', 'device', 'address', 'format', 'scale', 'word order', 'use', 'one count'],
    rows.map(([name, signal]) => [
      [words(name)],
      statedWord(signal.quantity),
      stated(signal.device ?? defaults?.registerDevice),
      stated(signal.address),
      stated(signal.format ?? defaults?.registerFormat),
      stated(signal.scale),
      stated(signal.byteOrder ?? defaults?.registerByteOrder),
      [direction(signal)],
      factText(tag, facts.get(oneCount(name))),
    ]),
  );
}

function alarmTable({ alarms, tag, facts }: PointEvaluation): readonly Block[] {
  return table(
    'Alarms',
    ['alarm', 'raised', 'clears at', 'delay', 'missed one tolerance beyond', 'false'],
    alarms.map(({ name, located, direction, limit, clear }) => [
      [words(name)],
      [...statedWord(located.value.quantity), ` ${direction} `, ...stated(limit)],
      stated(clear),
      stated(located.value.delay),
      factText(tag, facts.get(missedAlarm(name))),
      factText(tag, facts.get(falseAlarm(name))),
    ]),
  );
}
