/** Whole entries to start from: a space, a point, a model, a signal, a file. */
import { siteModelOf } from '../../../model/file-models.ts';
import type { FileKind } from '../../../model/schema.ts';
import { nextFreeTag } from '../next-tag.ts';
import type { CompletionItem, SnippetPiece } from './completion-item.ts';
import type { CompletionContext } from './context.ts';

/** Places to type in stand in ‹ ›. */
function piecesOf(text: string): readonly SnippetPiece[] {
  return text
    .split(/(\u2039[^\u203a]*\u203a)/)
    .map((piece) => (piece.startsWith('‹') ? { hole: piece.slice(1, -1) } : piece));
}

function snippet(label: string, detail: string, text: string): CompletionItem {
  return { label, kind: 'snippet', detail, insert: piecesOf(text) };
}

const SKELETONS: Readonly<Record<FileKind, string>> = {
  site: `dewright: 1
site:
  id: ‹site-id›
  title: ‹›
  altitude: ‹100› m
  surroundings: ‹5› .. ‹32› degC
  kits: [‹›]
spaces:
  ‹space-1›:
    air: {temperature: ‹20› .. ‹30› degC, humidity: ‹30› .. ‹60› %RH, speed: ‹0.5› .. ‹2› m/s}
points:
  ‹TAG-101›:
    space: ‹space-1›
    humidity-probe:
      model: ‹›
    reports:
      relative-humidity: {tolerance: ‹3› %RH}
`,
  kit: `dewright: 1
kit: {id: ‹kit-id›, title: ‹›}
humidity-probes:
  ‹hp-1›:
    title: ‹›
    ranges: {relative-humidity: 0 .. 100 %RH, temperature: ‹-40› .. ‹120› degC}
    accuracy:
      - {relative-humidity: ‹1.5› %RH, coverage: 2}
`,
  visit: `dewright: 1
visit: {site: ‹site-id›, date: ‹2026-01-31›, by: ‹›, purpose: check}
readings:
  - {point: ‹TAG-101›, quantity: ‹relative-humidity›, shown: ‹75.0› %RH, reference: ‹75.3› %RH, at: ‹25› degC, using: ‹saturated-salt NaCl›, state: as-found}
`,
};

/** For a file that holds nothing yet. */
export function skeletonItem(kind: FileKind): CompletionItem {
  return snippet('dewright: a new file', `skeleton of a ${kind} file`, SKELETONS[kind]);
}

const ENTRIES: Readonly<Record<string, readonly CompletionItem[]>> = {
  'site/spaces': [
    snippet(
      'space with one envelope',
      'temperature, humidity and air speed',
      '‹space-1›:\n  title: ‹›\n  air:\n    temperature: ‹20› .. ‹30› degC\n    humidity: ‹30› .. ‹60› %RH\n    speed: ‹0.5› .. ‹2› m/s',
    ),
    snippet(
      'space with phases',
      'one envelope for each phase of the process',
      '‹space-1›:\n  title: ‹›\n  phases:\n    ‹warm-up›: {temperature: ‹12› .. ‹55› degC, dew-point-depression: ‹1› .. ‹6› K, speed: ‹0.5› .. ‹2› m/s, ramp: ‹0.5› K/min}\n    ‹running›: {temperature: ‹55› .. ‹78› degC, humidity: ‹35› .. ‹88› %RH, speed: ‹0.5› .. ‹2› m/s}',
    ),
  ],
  'kit/humidity-probes': [
    snippet(
      'humidity probe',
      'what its data sheet says',
      '‹hp-1›:\n  title: ‹›\n  ranges: {relative-humidity: 0 .. 100 %RH, temperature: ‹-40› .. ‹120› degC, pressure: ‹50› .. ‹1000› kPa}\n  accuracy:\n    - {when: 0 .. 90 %RH, relative-humidity: ‹0.8› %RH, coverage: 2}\n    - {when: 90 .. 100 %RH, relative-humidity: ‹1.3› %RH, coverage: 2}\n  head-temperature: ‹0.1› K\n  drift: ‹0.5› %RH/year\n  response: ‹15› s\n  head: {diameter: ‹12› mm, length: ‹60› mm}\n  stem: {diameter: ‹12› mm, wall: ‹1› mm, material: stainless-steel}\n  heater: {power: ‹4› W, kind: constant-power, minimum-voltage: ‹18› V, maximum-rise: ‹20› K}\n  supply: {voltage: ‹10› .. ‹30› V, power: ‹0.6› W}\n  withstands: [‹›]',
    ),
  ],
  'kit/temperature-probes': [
    snippet(
      'temperature probe',
      'what its data sheet says',
      '‹tp-1›:\n  title: ‹›\n  ranges: {temperature: ‹-40› .. ‹180› degC}\n  accuracy: {class: ‹A›}\n  response: ‹20› s\n  stem: {diameter: ‹6› mm, wall: ‹0.5› mm, material: stainless-steel}',
    ),
  ],
  'kit/transmitters': [
    snippet(
      'transmitter',
      'what its data sheet says',
      '‹tx-1›:\n  title: ‹›\n  probes: ‹2›\n  supply: {voltage: ‹18› .. ‹30› V, power: ‹2› W}\n  outputs: {current-loop: ‹2›, register: true}\n  loop-minimum-voltage: ‹9› V\n  output-accuracy: ‹0.05› %',
    ),
  ],
  'kit/receivers': [
    snippet('receiver', 'an analogue input', '‹ai-1›: {input: ‹4› .. ‹20› mA, bits: ‹14›, accuracy: ‹0.1› %}'),
  ],
  'visit/steps': [
    snippet('handover step', 'by the name that the plan gives it', '‹heater-on›: {point: ‹›, done: true}'),
  ],
};

/** By the last key of the path, inside a space or a point. */
const INNER_ENTRIES: Readonly<Record<string, readonly CompletionItem[]>> = {
  phases: [
    snippet(
      'phase',
      'temperature, humidity and air speed',
      '‹phase-1›: {temperature: ‹20› .. ‹30› degC, humidity: ‹30› .. ‹60› %RH, speed: ‹0.5› .. ‹2› m/s}',
    ),
  ],
  signals: [
    snippet('current loop', '4 .. 20 mA', '‹AO1›: {kind: current-loop, quantity: ‹›, span: ‹›, on-fault: 21 mA}'),
    snippet('voltage output', '0 .. 10 V', '‹AO1›: {kind: voltage, quantity: ‹›, span: ‹›}'),
    snippet(
      'register',
      'read over a bus',
      '‹HR40›: {kind: register, quantity: ‹›, address: ‹40›, format: int16, scale: ‹›}',
    ),
  ],
  alarms: [
    snippet('alarm above a limit', 'with hysteresis', '‹too-wet›: {quantity: ‹›, above: ‹›, clear: ‹›, delay: 60 s}'),
    snippet('alarm below a limit', 'with hysteresis', '‹too-dry›: {quantity: ‹›, below: ‹›, clear: ‹›, delay: 60 s}'),
  ],
};

/** Entries of a map whose keys are names of the author's choice. */
export function entrySnippets(context: CompletionContext): readonly CompletionItem[] {
  const { kind, place } = context;
  if (place.inFlow || !place.onOwnLine) return [];
  const path = place.path.join('/');
  if (`${kind}/${path}` === 'site/points') return [pointSnippet(context)];
  const inner = place.path.length === 3 && kind === 'site' ? INNER_ENTRIES[place.path[2] ?? ''] : undefined;
  return ENTRIES[`${kind}/${path}`] ?? inner ?? [];
}

/** With the next tag, and a space and a probe of this site where there are any. */
function pointSnippet({ workspace, analysis: { content, parsed } }: CompletionContext): CompletionItem {
  const { spaces, points } = siteModelOf(parsed.model);
  const last = [...points.keys()].at(-1);
  const tag = last === undefined ? 'TAG-101' : nextFreeTag(workspace, last);
  const space = [...spaces.keys()].at(-1) ?? '';
  const model = content.kind === 'site' ? ([...content.site.catalogue.humidityProbes.keys()][0] ?? '') : '';
  return snippet(
    'point',
    'a humidity probe and what it reports',
    `‹${tag}›:\n  title: ‹›\n  space: ‹${space}›\n  humidity-probe:\n    model: ‹${model}›\n    serial: ‹›\n  reports:\n    ‹relative-humidity›: {tolerance: ‹3 %RH›}\n  supply: {voltage: ‹24› V, cable: {length: ‹20› m, conductor: 0.5 mm2}}\n  checks: {interval: ‹12› months}`,
  );
}
