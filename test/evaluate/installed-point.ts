/** Evaluates one point of a site text, with invented models whose figures make hand calculations short. */
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';

const SITE = fileUri('/fennmoor/fennmoor.dewsite.yaml');
const KIT = fileUri('/fennmoor/models.dewkit.yaml');

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

export interface SiteText {
  /** One space in flow style. */
  readonly space: string;
  /** What the point says besides its space, in flow style without the braces. */
  readonly point: string;
  readonly header?: string;
}

export function installedPoint({ space, point, header = 'surroundings: 5 .. 32 degC' }: SiteText): PointEvaluation {
  const workspace = new Workspace();
  workspace.set(KIT, MODELS);
  workspace.set(
    SITE,
    `dewright: 1
site: {id: fennmoor, ${header}, kits: [models.dewkit.yaml]}
spaces:
  room: ${space}
points:
  P-1: {space: room, ${point}}
`,
  );
  const content = workspace.analysis(SITE)?.content;
  const evaluated = content?.kind === 'site' ? content.site.points.get('P-1') : undefined;
  if (evaluated === undefined) throw new Error('the site text gives no point');
  return evaluated;
}

/** The value of a fact, which has to have one. */
export function knownValue(facts: PointEvaluation['facts'], id: string): number {
  const fact = facts.get(id);
  if (fact?.value === undefined) throw new Error(`${id}: ${fact?.missing ?? 'no such fact'}`);
  return fact.value;
}

/** Why a fact has no value. */
export function missingOf(facts: PointEvaluation['facts'], id: string): string | undefined {
  return facts.get(id)?.missing;
}
