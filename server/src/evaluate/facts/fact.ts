/**
 * A fact: a number that a user may see, with how it came about. Rules compare facts; diagnostics, hovers, JSON and
 * reports print them through the same functions.
 */
import type { Formula, OutsideFormula } from '../../physics/formula.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';

/** A state of the envelope at which a fact was computed. */
export interface Corner {
  /** Undefined for a space with one envelope. */
  readonly phase: string | undefined;
  readonly airCelsius: number;
  readonly relativeHumidity: number;
  readonly dewPointCelsius: number;
  readonly pressure: number;
  /** Air speed in m/s, where the fact depends on it. */
  readonly speed: number | undefined;
}

/** Something that a fact was computed from. */
export interface FactInput {
  readonly label: string;
  readonly text: string;
  /** The file it stands in, where that is not the file of the fact's subject. */
  readonly file?: string;
  readonly origin?: Origin;
}

/** A fact as it is read. It is declared with `declared-fact.ts`. */
export interface Fact<out Of extends Dimension = Dimension> {
  /** Unique among the facts of one subject: `humidity-at-sensor`, `relative-humidity/highest`. */
  readonly id: string;
  readonly title: string;
  readonly dimension: Of;
  /** Canonical; undefined where the fact has no value, and `missing` says why. */
  readonly value: number | undefined;
  readonly missing?: string | undefined;
  readonly at?: Corner | undefined;
  readonly inputs: readonly FactInput[];
  /** The relation in plain text, where it is more than one formula. */
  readonly relation?: string | undefined;
  readonly formulas: readonly Formula[];
  /** Assumptions, and in words which published range was left. */
  readonly notes: readonly string[];
  /** The formula whose published range the computation left. */
  readonly outside?: OutsideFormula | undefined;
}

/** A fact that has its value. */
export type KnownFact<Of extends Dimension = Dimension> = Fact<Of> & { readonly value: number };

export function isKnown<Of extends Dimension>(fact: Fact<Of> | undefined): fact is KnownFact<Of> {
  return fact?.value !== undefined;
}

export function showFact(fact: KnownFact): string {
  return showQuantity(fact.value, fact.dimension);
}

/** `75 °C and 98 %RH, phase conditioning` */
export function showCorner(corner: Corner): string {
  const air = showQuantity(corner.airCelsius, 'temperature');
  const humidity = showQuantity(corner.relativeHumidity, 'relative-humidity');
  const phase = corner.phase === undefined ? '' : `, phase ${corner.phase}`;
  if (corner.speed === undefined) return `${air} and ${humidity}${phase}`;
  return `${air}, ${humidity} and ${showQuantity(corner.speed, 'speed')}${phase}`;
}
