/** The memory behind the facts of a subject, and what a fact is made of once it is computed. */
import type { Formula, OutsideFormula } from '../../physics/formula.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import type { Computed, Derivation, FactKey, Facts } from './declared-fact.ts';
import type { Corner, Fact, FactInput } from './fact.ts';

/** @param subject whose facts they are; it holds them, and so is not there yet when they are made */
export function rememberedFacts<Subject>(subject: () => Subject): Facts<Subject> {
  return new RememberedFacts(subject);
}

/** A class, so that a test can listen to what is asked. */
export class RememberedFacts<Subject> implements Facts<Subject> {
  readonly #known = new Map<string, Fact | undefined>();
  readonly #subject: () => Subject;

  constructor(subject: () => Subject) {
    this.#subject = subject;
  }

  get<Of extends Dimension>(key: FactKey<Subject, Of>): Fact<Of> | undefined {
    // What stands under an id was computed with the dimension of the key that has it: no two keys have one id.
    if (this.#known.has(key.id)) return this.#known.get(key.id) as Fact<Of> | undefined;
    const subject = this.#subject();
    const computed = key.compute(subject);
    const fact = computed === undefined ? undefined : new ComputedFact(key, subject, computed);
    this.#known.set(key.id, fact);
    return fact;
  }
}

/** Of a subject without a memory of its own: a pair of readings, a recording. */
export function factOf<Subject, Of extends Dimension>(
  key: FactKey<Subject, Of>,
  subject: Subject,
): Fact<Of> | undefined {
  return new RememberedFacts(() => subject).get(key);
}

/** A class, so that thousands of facts share their getters. */
class ComputedFact<Subject, Of extends Dimension> implements Fact<Of> {
  readonly id: string;
  readonly dimension: Of;
  readonly value: number | undefined;
  readonly missing: string | undefined;
  readonly outside: OutsideFormula | undefined;
  readonly #key: FactKey<Subject, Of>;
  readonly #subject: Subject;
  readonly #derive: () => Derivation;
  #at: Corner | (() => Corner) | undefined;
  #derivation: Derivation | undefined;

  constructor(key: FactKey<Subject, Of>, subject: Subject, { value, missing, at, outside, derivation }: Computed) {
    this.id = key.id;
    this.dimension = key.dimensionOf(subject);
    this.value = value;
    this.missing = missing;
    this.outside = outside;
    this.#key = key;
    this.#subject = subject;
    this.#derive = derivation;
    this.#at = at;
  }

  get at(): Corner | undefined {
    if (typeof this.#at === 'function') this.#at = this.#at();
    return this.#at;
  }

  get title(): string {
    return this.#key.titleOf(this.#subject);
  }

  get inputs(): readonly FactInput[] {
    return this.#derived().inputs;
  }

  get relation(): string | undefined {
    return this.#derived().relation;
  }

  get formulas(): readonly Formula[] {
    return this.#derived().formulas;
  }

  get notes(): readonly string[] {
    return this.#derived().notes ?? [];
  }

  #derived(): Derivation {
    this.#derivation ??= this.#derive();
    return this.#derivation;
  }
}
