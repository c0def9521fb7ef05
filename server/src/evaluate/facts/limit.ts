/**
 * Limits that facts are held to. Each is declared once, beside what it limits; rules, packs, drawings, steps and
 * completions ask that object, so that a number is compared with a limit here and nowhere else.
 */
import { exceeds } from '../../base/rounding.ts';
import type { Located } from '../../model/located.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Quantity, QuantityRange } from '../../quantity/quantity.ts';
import type { FactKey, Facts } from './declared-fact.ts';
import { type Fact, isKnown, type KnownFact } from './fact.ts';
import type { Setting } from './site-settings.ts';

/** The side on which a number has to stay; with `above` and `below` the bound itself is already broken. */
export type LimitSide = 'at most' | 'at least' | 'below' | 'above';

export interface Bound {
  /** Canonical. */
  readonly value: number;
  /** As whoever set the limit wrote it, and which part of that the bound is: `a third of` a tolerance. */
  readonly written: number;
  readonly dimension: Dimension;
  readonly part?: string;
  /** True where nobody wrote it and the program's own value counts. */
  readonly isBuiltIn: boolean;
}

export interface Limit<in Subject, out Of extends Dimension = Dimension> {
  readonly side: LimitSide;
  readonly factOf: (subject: Subject) => Fact<Of> | undefined;
  /** Undefined where the subject has no such limit. */
  readonly boundOf: (subject: Subject) => Bound | undefined;
}

/** A fact laid against its limit. */
export interface Held<out Of extends Dimension = Dimension> {
  readonly fact: KnownFact<Of>;
  readonly side: LimitSide;
  readonly bound: Bound;
  readonly isKept: boolean;
}

/** A subject of facts. */
interface Known<Subject> {
  readonly facts: Facts<Subject>;
}

export function limit<Subject extends Known<Subject>, Of extends Dimension>(
  fact: FactKey<Subject, Of>,
  side: LimitSide,
  boundOf: (subject: Subject) => Bound | undefined,
): Limit<Subject, Of> {
  return { side, factOf: ({ facts }) => facts.get(fact), boundOf };
}

/** @returns undefined where the subject has no such limit, or the fact no value */
export function held<Subject, Of extends Dimension>(
  { side, factOf, boundOf }: Limit<Subject, Of>,
  subject: Subject,
): Held<Of> | undefined {
  const bound = boundOf(subject);
  return bound === undefined ? undefined : judged(factOf(subject), side, bound);
}

/** For limits whose fact and bound come from two subjects: the air of a space, and the range of a model. */
export function judged<Of extends Dimension>(
  fact: Fact<Of> | undefined,
  side: LimitSide,
  bound: Bound,
): Held<Of> | undefined {
  return isKnown(fact) ? { fact, side, bound, isKept: keeps(fact.value, side, bound.value) } : undefined;
}

/** What breaks its limit; undefined where the limit is kept, or nobody knows. */
export function broken<Subject, Of extends Dimension>(of: Limit<Subject, Of>, subject: Subject): Held<Of> | undefined {
  const found = held(of, subject);
  return found?.isKept === false ? found : undefined;
}

/** What keeps its limit; undefined where the limit is broken, or nobody knows. */
export function kept<Subject, Of extends Dimension>(of: Limit<Subject, Of>, subject: Subject): Held<Of> | undefined {
  const found = held(of, subject);
  return found?.isKept === true ? found : undefined;
}

function keeps(value: number, side: LimitSide, bound: number): boolean {
  switch (side) {
    case 'at most':
      return !exceeds(value, bound);
    case 'at least':
      return !exceeds(bound, value);
    case 'below':
      return exceeds(bound, value);
    case 'above':
      return exceeds(value, bound);
  }
}

/** The bound that something gives, if it is there. */
export function boundIf<Value>(given: Value | undefined, boundOf: (given: Value) => Bound): Bound | undefined {
  return given === undefined ? undefined : boundOf(given);
}

/** `80 %RH`, as it was written. */
export function showBound({ written, dimension }: Bound): string {
  return showQuantity(written, dimension);
}

function wholeBound(value: number, dimension: Dimension, isBuiltIn: boolean): Bound {
  return { value, written: value, dimension, isBuiltIn };
}

/** What the site sets, or the value built in. */
export function settingBound({ value, origin }: Setting, dimension: Dimension): Bound {
  return wholeBound(value, dimension, origin === undefined);
}

/** Of the rules themselves. */
export function figureBound(value: number, dimension: Dimension): Bound {
  return wholeBound(value, dimension, true);
}

export function writtenBound({ value: { value, dimension } }: Located<Quantity>): Bound {
  return wholeBound(value, dimension, false);
}

/** @param part in words: `a third of` */
export function partBound({ value: { value, dimension } }: Located<Quantity>, share: number, part: string): Bound {
  return { value: value * share, written: value, dimension, part, isBuiltIn: false };
}

export function endBound({ value: range }: Located<QuantityRange>, end: 'low' | 'high'): Bound {
  const { [end]: value, dimension } = range;
  return wholeBound(value, dimension, false);
}

/** Another fact that this one is held to. */
export function factBound(fact: Fact | undefined): Bound | undefined {
  if (!isKnown(fact)) return undefined;
  return wholeBound(fact.value, fact.dimension, false);
}
