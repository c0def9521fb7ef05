/** Evaluates one point of a site text, with invented models whose figures make hand calculations short. */
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';
import { type AssessedText, assessedPoint } from './assessed-point.ts';
import { known } from './evaluated-site.ts';
import type { FactsById } from './facts-by-id.ts';

const MODELS = `dewright: 1
kit: {id: models}
humidity-probes:
  heated: &heated
    head-temperature: 0.1 K
    response: 15 s
    head: {diameter: 12 mm, length: 60 mm}
    stem: {diameter: 12 mm, wall: 1 mm, material: stainless-steel}
    heater: {power: 4 W, kind: constant-power, minimum-voltage: 18 V, maximum-rise: 20 K}
    supply: {voltage: 10 .. 30 V, power: 0.6 W}
  resistive:
    <<: *heated
    heater: {power: 4 W, kind: resistive, rated-voltage: 24 V, maximum-rise: 100 K}
temperature-probes:
  # The cylinder of Incropera, example 7.4, as a solid rod.
  rod: {response: 20 s, stem: {diameter: 12.7 mm, wall: 6.35 mm, material: stainless-steel}}
  slim: {response: 20 s, stem: {diameter: 6 mm, wall: 0.5 mm, material: stainless-steel}}
transmitters:
  loop: {supply: {voltage: 18 .. 30 V, power: 2 W}, loop-minimum-voltage: 12 V}
`;

/** A site text without a kit: the models above are its kit. */
export type SiteText = Omit<AssessedText, 'kit'>;

export function installedPoint(text: SiteText): PointEvaluation {
  return assessedPoint({ ...text, kit: MODELS });
}

/** The value of a fact, which has to have one. */
export function knownValue(facts: FactsById, id: string): number {
  return known(facts.get(id)).value;
}

/** Why a fact has no value. */
export function missingOf(facts: FactsById, id: string): string | undefined {
  return facts.get(id)?.missing;
}
