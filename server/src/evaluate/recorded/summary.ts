/**
 * What a recording of a space says, as plain data: made once by reading the log, then shown by rules, hovers, charts and
 * the command line. Values are canonical; every share and quantile is weighted by time, not by rows.
 */
import { exceeds } from '../../base/rounding.ts';
import type { HumidityKey } from '../air/envelope.ts';

/** What an envelope bounds: the air temperature, the humidity it is given by, the air speed. */
export type BoundedQuantity = 'air-temperature' | 'speed' | Exclude<HumidityKey, 'humidity'> | 'relative-humidity';

export interface Bound {
  readonly quantity: BoundedQuantity;
  readonly low: number;
  readonly high: number;
}

export interface RecordingEnvelope {
  /** Absent for the one envelope `air`. */
  readonly phase?: string;
  readonly bounds: readonly Bound[];
}

/** What a recording is laid against. While it and the recording are the same, so is the summary. */
export interface RecordingBasis {
  readonly space: string;
  /** Pa; used where the log has no column of the pressure. */
  readonly pressure: number;
  readonly envelopes: readonly RecordingEnvelope[];
  /** How far the sensors of the space are heated, in K; 0, the unheated sensor, comes first. */
  readonly rises: readonly number[];
  readonly sensorHumidityLimit: number;
  readonly unheatedHumidityLimit: number;
}

/** A moment of the recording: ISO 8601, as the log's clock has it, or `12 h` from the start. */
export interface Moment {
  readonly time: string;
  readonly airCelsius: number;
  readonly dewPointCelsius: number | undefined;
  readonly relativeHumidity: number;
}

export interface RecordingSummary {
  readonly basis: RecordingBasis;
  readonly extent: RecordingExtent;
  readonly faults: RecordingFaults;
  readonly outside: RecordingOutside;
  /** In the order of the basis' rises. */
  readonly sensors: readonly SensorHumidity[];
  readonly ramps: { readonly rising?: Ramp; readonly falling?: Ramp };
  /** What the air did: the envelope that the log supports. */
  readonly ranges: Readonly<Partial<Record<BoundedQuantity, RecordedRange>>>;
  readonly density: Density;
}

export interface RecordingExtent {
  readonly rows: number;
  readonly from: string;
  readonly to: string;
  /** s, from row to row in the log; gaps are not counted. */
  readonly seconds: number;
  /** s of it with a state of air that can be computed with. */
  readonly usedSeconds: number;
  /** Usual time between two rows, s. */
  readonly step: number;
  /** Which columns were read as what, and in which unit. */
  readonly columns: readonly UsedColumn[];
}

export interface UsedColumn {
  readonly quantity: string;
  readonly column: string;
  readonly unit: string;
}

/** What was wrong with rows and times. Nothing of it is dropped without being counted here. */
export interface RecordingFaults {
  /** Rows that could not be taken apart: a line too long, bytes that are no text. They are left out. */
  readonly brokenRows: number;
  /** Rows without a readable time. They are left out. */
  readonly timeless: number;
  /** Rows without a readable air temperature or humidity. Their time counts as time without a value. */
  readonly valueless: number;
  /** Rows whose speed cannot be read. The rest of the row counts. */
  readonly speedless: number;
  /** Rows whose air cannot exist, such as a dew point above the air temperature. Time without a value. */
  readonly impossible: number;
  /** Rows above saturation by at most 5 %RH: sensors err by that. They count as saturated air. */
  readonly takenAsSaturated: number;
  /** Rows at the time of the row before. The last of them counts. */
  readonly duplicates: number;
  /** Rows at an earlier time than the row before, which then counts for no time. */
  readonly backwards: number;
  /** Steps of more than three usual steps: the row before counts for one usual step, the rest is nobody's time. */
  readonly gaps: number;
  readonly gapSeconds: number;
  readonly longestGap?: { readonly seconds: number; readonly from: string };
  /** Local times that jump by an hour on a Sunday night: taken for the change to and from summer time. */
  readonly clockForward: number;
  readonly clockBack: number;
}

/** Share of its time that a recording may lie outside its envelope. */
const OUTSIDE_LIMIT = 0.01;

/** True where a recording lies outside every envelope for longer than it may. */
export function leavesEnvelope({ outside }: RecordingSummary): boolean {
  return exceeds(outside.share, OUTSIDE_LIMIT);
}

export interface RecordingOutside {
  readonly seconds: number;
  /** Of the time with a value. */
  readonly share: number;
  /** In the order of the basis' envelopes. Time outside all of them counts for the one of the nearest temperatures. */
  readonly envelopes: readonly EnvelopeOutside[];
}

export interface EnvelopeOutside {
  readonly phase?: string;
  readonly insideSeconds: number;
  readonly excesses: readonly Excess[];
}

/** How far and how long one bound was passed. */
export interface Excess {
  readonly quantity: BoundedQuantity;
  readonly side: 'below' | 'above';
  readonly limit: number;
  readonly seconds: number;
  readonly farthest: number;
  readonly at: Moment;
  /** The bound that all but 0.1 % of the recording's time would keep. */
  readonly covering: number;
}

/** The humidity at a sensor of the space over the recording. */
export interface SensorHumidity {
  readonly rise: number;
  readonly limit: number;
  readonly secondsAboveLimit: number;
  readonly highest: number;
  readonly highestAt: Moment;
  /** K: temperature of the sensor less the dew point; absent where no row has a dew point. */
  readonly leastMargin?: { readonly kelvin: number; readonly at: Moment };
  /** Quantiles of the relative humidity at the sensor, to 0.1 %RH. */
  readonly quantiles: readonly Quantile[];
}

export interface Quantile {
  readonly share: number;
  readonly value: number;
}

/** The steepest change of the air temperature that lasted ten minutes or more. */
export interface Ramp {
  /** K/s, negative where it falls. */
  readonly perSecond: number;
  readonly from: string;
  readonly to: string;
}

export interface RecordedRange {
  readonly lowest: number;
  readonly highest: number;
  /** The 0.5 % and 99.5 % quantiles. */
  readonly low: number;
  readonly high: number;
}

/** How long the air was in each cell of air temperature and dew point. */
export interface Density {
  /** Width and height of a cell, K. */
  readonly step: number;
  /** The lower edges of each cell in °C, and its time in s. */
  readonly cells: readonly (readonly [airCelsius: number, dewPointCelsius: number, seconds: number])[];
}
