/** Evaluates one point of an invented site with the visits that were paid to it. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import type { History } from '../../server/src/evaluate/history/history.ts';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';

const SITE = fileUri('/fennmoor/fennmoor.dewsite.yaml');
const MODELS = readFileSync(fileURLToPath(new URL('../rules/kits/models.dewkit.yaml', import.meta.url)), 'utf8');

/** The readings of one visit, each in flow style without the point and the quantity, which are the same for all. */
export interface VisitText {
  readonly date: string;
  readonly purpose?: 'commissioning' | 'check' | 'repair';
  readonly readings: readonly string[];
}

export interface VisitedText {
  readonly visits: readonly VisitText[];
  /** In flow style without the braces. */
  readonly checks?: string;
  /** The probes of the point, in block style. */
  readonly probes?: string;
  readonly tolerance?: string;
  readonly today?: string;
}

/** A store of 20 °C and about 50 %RH with a point that reports its relative humidity, from an unheated probe. */
export function visitedPoint({
  visits,
  checks = 'interval: 12 months, method: reference-instrument',
  probes = 'humidity-probe: {model: plain}',
  tolerance = '3 %RH',
  today = '2026-10-01',
}: VisitedText): PointEvaluation {
  const source = probes.includes('air-temperature-probe') ? 'air-temperature: air-temperature-probe, ' : '';
  const workspace = new Workspace({ today: () => today });
  workspace.set(fileUri('/fennmoor/models.dewkit.yaml'), MODELS);
  for (const { date, purpose = 'check', readings } of visits) {
    const lines = readings.map((reading) => `  - {point: S-1, quantity: relative-humidity, ${reading}}\n`);
    workspace.set(
      fileUri(`/fennmoor/${date}.dewvisit.yaml`),
      `dewright: 1\nvisit: {site: fennmoor, date: ${date}, purpose: ${purpose}}\nreadings:\n${lines.join('')}`,
    );
  }
  workspace.set(
    SITE,
    `dewright: 1
site: {id: fennmoor, surroundings: 5 .. 32 degC, kits: [models.dewkit.yaml]}
spaces:
  store: {air: {temperature: 18 .. 22 degC, humidity: 40 .. 60 %RH, speed: 0.3 m/s}, gradient: 0.5 K/m}
points:
  S-1:
    space: store
    ${probes}
    reports: {relative-humidity: {${source}tolerance: ${tolerance}}}
    checks: {${checks}}
`,
  );
  workspace.markWhole();
  const content = workspace.analysis(SITE)?.content;
  const point = content?.kind === 'site' ? content.site.points.get('S-1') : undefined;
  if (point === undefined) throw new Error('the site text gives no point');
  return point;
}

export function humidityHistory(point: PointEvaluation): History {
  const history = point.histories.get('relative-humidity');
  if (history === undefined) throw new Error('nothing was read');
  return history;
}

/** One pair against a reference of 50 %RH. @param error in %RH */
export function pair(error: number, more = 'reference-uncertainty: 1 %RH'): string {
  return `shown: ${(50 + error).toFixed(2)} %RH, reference: 50 %RH, ${more}`;
}
