/** What makes a reported value uncertain: the sources of a budget, what each is called, and what would lessen it. */
import type { StatedAs } from '../../physics/metrology/standard-uncertainty.ts';
import type { FactInput } from '../facts/fact.ts';
import type { MeasuredInput, SensedState } from './measurement.ts';

/** Limits or an uncertainty as a data sheet states it. */
export interface StatedUncertainty {
  /** Half-width of the limits, or expanded uncertainty, in the unit of the input. */
  readonly halfWidth: number;
  readonly statedAs: StatedAs;
}

export interface UncertaintySource {
  readonly kind: SourceKind;
  readonly enters: MeasuredInput;
  /** The terminal or register where it is, for what a signal adds. */
  readonly signal?: string;
  /** Where it is stated in the rows of a table, the number of the row that holds: it jumps between two. */
  readonly rowAt?: (sensed: SensedState) => number;
  /** Undefined where nothing is stated for that state. */
  readonly statedAt: (sensed: SensedState) => StatedUncertainty | undefined;
  readonly inputsAt: (sensed: SensedState) => readonly FactInput[];
}

/** A source whose limits are the same everywhere: rectangular, to either side. */
export function limitsSource(
  kind: SourceKind,
  enters: MeasuredInput,
  halfWidth: number,
  inputs: readonly FactInput[],
): UncertaintySource {
  const stated = { halfWidth, statedAs: 'rectangular' } as const;
  return { kind, enters, statedAt: () => stated, inputsAt: () => inputs };
}

/** The sources of one budget, and in words what could not be counted. */
export interface GatheredSources {
  readonly sources: readonly UncertaintySource[];
  readonly leftOut: readonly string[];
}

export type SourceKind = keyof typeof SOURCES;

/** What a person can change, as it stands in 'A shorter check interval would …'. */
export type Remedy = keyof typeof REMEDIES;

const REMEDIES = {
  sensor: 'a more accurate humidity probe',
  'sensor-temperature': 'a humidity probe that knows the temperature of its sensor better',
  interval: 'a shorter check interval',
  probe: 'a more accurate air-temperature probe',
  'own-probe': 'an air-temperature probe',
  insertion: 'a deeper insertion or insulation around the fitting',
  shield: 'a radiation shield around the probe',
  heat: 'an air-temperature probe out of the warmth of the heated head',
  closeness: 'an air-temperature probe closer to the humidity probe',
  response: 'faster probes or a slower ramp',
  pressure: 'a measured pressure',
  signal: 'a narrower span or a better input',
  scale: 'a finer scale of the register',
} as const;

interface SourceInfo {
  readonly title: string;
  readonly remedy: Remedy;
  /** The part of the standard uncertainty that changes from one reading to the next, and so makes an alarm chatter. */
  readonly changingPart: number;
}

/** Kit files state no repeatability. Common practice, no source. */
const REPEATABLE_PART_OF_ACCURACY = 1 / 3;

/** Why some contributions make an alarm chatter and others only shift it. */
export const REPEATABILITY_NOTE =
  'Noise is resolution, the differences of temperature in the space, the warmth of the head, and a third of the accuracy for repeatability, which no data sheet states (common practice, no source); drift, tolerances and the pull of the wall stay from one reading to the next.';

function info(title: string, remedy: Remedy, changingPart = 0): SourceInfo {
  return { title, remedy, changingPart };
}

const SOURCES = {
  'sensor-accuracy': info('accuracy of the humidity sensor', 'sensor', REPEATABLE_PART_OF_ACCURACY),
  'sensor-drift': info('drift of the humidity sensor since its check', 'interval'),
  'sensor-temperature': info('temperature of the humidity sensor', 'sensor-temperature'),
  'probe-accuracy': info('tolerance of the air-temperature probe', 'probe'),
  'probe-drift': info('drift of the air-temperature probe since its check', 'interval'),
  'fixed-temperature': info('air temperature taken as fixed', 'own-probe'),
  'stem-conduction': info('pull of the wall through the stem', 'insertion'),
  radiation: info('radiation between probe and wall', 'shield'),
  'head-warming': info('warmth of the heated head', 'heat', 1),
  gradient: info('air temperature between the two probes', 'closeness', 1),
  lag: info('lag behind the ramp', 'response'),
  pressure: info('pressure of the space within its range', 'pressure'),
  weather: info('air pressure with the weather', 'pressure'),
  'output-accuracy': info('accuracy of the output', 'signal'),
  'receiver-accuracy': info('accuracy of the receiver', 'signal'),
  'receiver-resolution': info('resolution of the receiver', 'signal', 1),
  'register-resolution': info('resolution of the register', 'scale', 1),
} as const satisfies Record<string, SourceInfo>;

export function sourceInfo(kind: SourceKind): SourceInfo {
  return SOURCES[kind];
}

export function remedyWords(remedy: Remedy): string {
  return REMEDIES[remedy];
}
