/**
 * Facts as they are declared, each once for the whole program: its key, its title, its dimension and how it is computed
 * of a subject, a point or a space for example. Whoever wants the number asks the subject's facts with the declaration:
 * it is computed then, once, and what explains it only when somebody reads that.
 */
import { rememberedByName } from '../../base/remembered.ts';
import type { Formula, OutsideFormula } from '../../physics/formula.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import type { Corner, Fact, FactInput } from './fact.ts';

/** One fact of one subject: what `Facts.get` takes. */
export interface FactKey<in Subject, out Of extends Dimension = Dimension> extends NamedFact {
  /** Unique among the facts of one subject: `humidity-at-sensor`, `alarm/too-wet/missed-alarm`. */
  readonly id: string;
  readonly titleOf: (subject: Subject) => string;
  readonly dimensionOf: (subject: Subject) => Of;
  /** Undefined where the subject has no such fact. */
  readonly compute: (subject: Subject) => Computed | undefined;
}

/** The same fact of every member of a kind: `QUANTITY/expanded-uncertainty` of every report. */
export interface FactFamily<in Subject, in Member, out Of extends Dimension = Dimension> extends NamedFact {
  (member: Member): FactKey<Subject, Of>;
}

/** A fact or a family, as the pages of the rules name it. */
export interface NamedFact {
  /** Of one fact. */
  readonly id?: string;
  /** The id with the kind in the place of the member: `humidity-at-sensor`, `alarm/ALARM/missed-alarm`. */
  readonly pattern: string;
}

/** What computing a fact gives. */
export interface Computed {
  /** Canonical; undefined where the fact has no value, and `missing` says why. */
  readonly value: number | undefined;
  readonly missing?: string;
  /** Where it is worst; as a function where telling it takes longer than holding the state. */
  readonly at?: Corner | (() => Corner) | undefined;
  readonly outside?: OutsideFormula | undefined;
  /** How it came about: made when somebody reads it. */
  readonly derivation: () => Derivation;
}

export interface Derivation {
  readonly inputs: readonly FactInput[];
  readonly relation?: string | undefined;
  readonly formulas: readonly Formula[];
  readonly notes?: readonly string[];
}

export interface FactDeclaration<Subject, Of extends Dimension> {
  readonly title: string | ((subject: Subject) => string);
  readonly dimension: Of;
  readonly compute: (subject: Subject) => Computed | undefined;
}

export function declaredFact<Subject, Of extends Dimension>(
  id: string,
  { title, dimension, compute }: FactDeclaration<Subject, Of>,
): FactKey<Subject, Of> {
  const titleOf = typeof title === 'string' ? () => title : title;
  return { id, pattern: id, titleOf, dimensionOf: () => dimension, compute };
}

export interface FamilyDeclaration<Subject, Member, Of extends Dimension> {
  readonly title: (member: Member, subject: Subject) => string;
  readonly dimension: Of | ((member: Member, subject: Subject) => Of);
  readonly compute: (subject: Subject, member: Member) => Computed | undefined;
}

/** @param idOf the id for a member, and the pattern where it is given the kind: `(name) => \`alarm/${name}/missed-alarm\`` */
export function factFamily<Subject, Member, Of extends Dimension>(
  idOf: (member: Member) => string,
  pattern: string,
  { title, dimension, compute }: FamilyDeclaration<Subject, Member, Of>,
): FactFamily<Subject, Member, Of> {
  const keyOf = (member: Member): FactKey<Subject, Of> => ({
    id: idOf(member),
    pattern,
    titleOf: (subject) => title(member, subject),
    dimensionOf: (subject) => (typeof dimension === 'function' ? dimension(member, subject) : dimension),
    compute: (subject) => compute(subject, member),
  });
  return Object.assign(keyOf, { pattern });
}

/** A family of the members of a closed set of names, whose keys are made once. */
export function namedFamily<Subject, Name extends string, Of extends Dimension>(
  idOf: (name: Name) => string,
  pattern: string,
  declaration: FamilyDeclaration<Subject, Name, Of>,
): FactFamily<Subject, Name, Of> {
  return Object.assign(rememberedByName(factFamily(idOf, pattern, declaration)), { pattern });
}

/** The facts of one subject, computed when they are asked for and remembered. */
export interface Facts<out Subject> {
  get<Of extends Dimension>(key: FactKey<Subject, Of>): Fact<Of> | undefined;
}
