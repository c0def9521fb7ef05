/** The facts of a point are declared with these. */
import type { Dimension } from '../../quantity/dimension.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import {
  type Computed,
  declaredFact,
  type FactDeclaration,
  type FactFamily,
  type FactKey,
  type FamilyDeclaration,
  factFamily,
  namedFamily,
} from '../facts/declared-fact.ts';
import type { ResolvedPoint } from './resolved-point.ts';

export type PointFact<Of extends Dimension = Dimension> = FactKey<ResolvedPoint, Of>;
export type ReportFact<Of extends Dimension = Dimension> = FactFamily<ResolvedPoint, QuantityName, Of>;
/** By the name of the signal, alarm or salt, as the file gives it. */
export type FactByName<Of extends Dimension = Dimension> = FactFamily<ResolvedPoint, string, Of>;

export function pointFact<Of extends Dimension>(
  id: string,
  declaration: FactDeclaration<ResolvedPoint, Of>,
): PointFact<Of> {
  return declaredFact(id, declaration);
}

type Family<Member, Of extends Dimension> = FamilyDeclaration<ResolvedPoint, Member, Of>;

/** `QUANTITY/NAME`, of what is reported. No quantity is called like a kind below. */
export function reportFact<Of extends Dimension>(name: string, declaration: Family<QuantityName, Of>): ReportFact<Of> {
  return namedFamily((quantity) => `${quantity}/${name}`, `QUANTITY/${name}`, declaration);
}

/** `signal/SIGNAL/NAME` */
export function signalFact<Of extends Dimension>(name: string, declaration: Family<string, Of>): FactByName<Of> {
  return factFamily((signal) => `signal/${signal}/${name}`, `signal/SIGNAL/${name}`, declaration);
}

/** `alarm/ALARM/NAME` */
export function alarmFact<Of extends Dimension>(name: string, declaration: Family<string, Of>): FactByName<Of> {
  return factFamily((alarm) => `alarm/${alarm}/${name}`, `alarm/ALARM/${name}`, declaration);
}

/** `salt/SALT/NAME` */
export function saltFact<Of extends Dimension>(name: string, declaration: Family<string, Of>): FactByName<Of> {
  return factFamily((salt) => `salt/${salt}/${name}`, `salt/SALT/${name}`, declaration);
}

/** The space of a point where its envelopes can be computed with. */
export function completeSpace({ space }: ResolvedPoint): SpaceEvaluation | undefined {
  return space?.complete === true ? space : undefined;
}

/** A computation that needs the air of the point's space; none without it. */
export function inSpace<Rest extends readonly unknown[]>(
  compute: (point: ResolvedPoint, space: SpaceEvaluation, ...rest: Rest) => Computed | undefined,
): (point: ResolvedPoint, ...rest: Rest) => Computed | undefined {
  return (point, ...rest) => {
    const space = completeSpace(point);
    return space === undefined ? undefined : compute(point, space, ...rest);
  };
}
