/**
 * A caution about hot surfaces, and no more: burn thresholds of bare metal for stated contact times. Only thresholds
 * that could be confirmed at second hand are here; the standard's own bands for contacts of seconds are not.
 */
import type { Formula } from '../formula.ts';

export interface TouchCaution {
  /** Surface temperature from which the caution holds, °C. */
  readonly thresholdCelsius: number;
  readonly contact: string;
  readonly provenance: string;
}

/** 43 °C for 8 h, 48 °C for 10 min, about 65 °C for half a second */
export const TOUCH_TEMPERATURE: Formula = {
  id: 'touch-temperature',
  title: 'Burn thresholds of bare metal, as a caution',
  source: 'ISO 13732-1, at second hand; the standard itself and local rules decide',
  validity: [],
};

/** Hottest first. */
const CAUTIONS: readonly TouchCaution[] = [
  { thresholdCelsius: 65, contact: 'about half a second of contact', provenance: 'ISO 13732-1, at second hand' },
  { thresholdCelsius: 48, contact: '10 minutes of contact', provenance: 'EN ISO 13732-1, at second hand' },
  { thresholdCelsius: 43, contact: '8 hours of contact', provenance: 'ISO 13732-1, the time from memory' },
];

/**
 * The caution that a surface calls for, if any: the one for the shortest contact that may burn.
 *
 * Worked value (EN ISO 13732-1, at second hand): bare metal at 50 °C may burn in contact of 10 minutes.
 *
 * @param surfaceCelsius temperature of the surface, °C
 */
export function touchCaution(surfaceCelsius: number): TouchCaution | undefined {
  return CAUTIONS.find(({ thresholdCelsius }) => surfaceCelsius >= thresholdCelsius);
}
