/** What stands exactly at a limit is within it, however the computation on the way there was rounded. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { steps } from '../physics/numeric.ts';
import { RULES_FOLDER } from './fixture.ts';

const SITE = fileUri(`${RULES_FOLDER}at-the-limit.dewsite.yaml`);
const MODELS = 'kits/models.dewkit.yaml';
const KIT = readFileSync(`${RULES_FOLDER}${MODELS}`, 'utf8');

interface Example {
  /** In flow style without the braces. */
  readonly space: string;
  readonly point?: string;
  readonly defaults?: string;
  readonly kit?: string;
}

function rulesFiring({ space, point = 'humidity-probe: {model: plain}', defaults = '', kit = KIT }: Example) {
  const workspace = new Workspace({ today: () => '2026-10-01' });
  workspace.set(fileUri(`${RULES_FOLDER}${MODELS}`), kit);
  workspace.set(
    SITE,
    `dewright: 1
site: {id: fennmoor, altitude: 210 m, surroundings: 5 .. 32 degC, kits: [${MODELS}], defaults: {${defaults}}}
spaces:
  room: {${space}}
points:
  P-1: {space: room, ${point}}
`,
  );
  workspace.markWhole();
  return workspace.analysis(SITE)?.findings.map(({ rule }) => rule) ?? [];
}

const HEATED = 'humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K, set-at: site}}';
const MEDIUM_AIR = 'air: {temperature: 20 .. 30 degC, humidity: 30 .. 50 %RH, speed: 1 .. 2 m/s}';

/** Examples by a number from 1 to 20, and by how many written digits they lie beyond the limit. */
type At = (n: number, beyond: 0 | 1) => Example;

const EXAMPLES: readonly (readonly [rule: string, what: string, at: At])[] = [
  [
    'sensor-may-condense',
    'a humidity of 90 %RH under a limit of 90 %RH',
    (n, beyond) => ({
      space: `air: {temperature: ${n} .. ${n + 9} degC, humidity: 30 .. ${90 + beyond / 10} %RH}`,
      defaults: 'margin: 0 K',
    }),
  ],
  [
    'sensor-may-condense',
    'a depression of 2 K with a margin of 2 K',
    (n, beyond) => ({
      space: `air: {temperature: ${-20 - n / 10} .. -5 degC, dew-point-depression: ${2 - beyond / 10} .. 6 K}`,
    }),
  ],
  [
    'outside-range',
    'saturated air in a range of 0 .. 100 %RH',
    (n, beyond) => ({
      space: `air: {temperature: ${n} .. ${n + 30} degC, mixing-ratio: 0.1 .. ${n + 6} g/kg}`,
      kit: KIT.replaceAll('0 .. 100 %RH', `0 .. ${100 - beyond / 10} %RH`),
    }),
  ],
  [
    'cold-start',
    'a head that enters a phase at its highest dew point',
    (n, beyond) => ({
      space: `phases: {one: {temperature: ${n + 0.3} .. 60 degC, dew-point: -5 .. 0.2 degC}, two: {temperature: 60 .. 70 degC, dew-point: 0.1 .. ${n + 0.3 + beyond / 10} degC}}`,
    }),
  ],
  [
    'dew-or-frost',
    'a dew point from 0 °C on',
    (n, beyond) => ({
      space: `pressure: ${90 + n} kPa, air: {temperature: 15 .. 26 degC, dew-point: ${-beyond / 10} .. 10 degC}`,
      point: 'reports: {dew-point: {}}',
    }),
  ],
  [
    'quantity-out-of-formula',
    'a dew point from −50 °C on',
    (n, beyond) => ({
      space: `pressure: ${n / 10} MPa, air: {temperature: 15 .. 26 degC, dew-point: ${-50 - beyond / 10} .. 10 degC}`,
      point: 'reports: {dew-point: {}}',
    }),
  ],
  [
    'probes-too-far',
    'a gradient that costs a third of the tolerance',
    (n, beyond) => ({
      space: `gradient: ${n / 10} K/m, ${MEDIUM_AIR}`,
      point: `${HEATED}, air-temperature-probe: {model: slim, mounting: {insertion: 180 mm, position: below, spacing: ${300 + beyond} mm}}, reports: {air-temperature: {air-temperature: air-temperature-probe, tolerance: ${(9 * n) / 100} K}}`,
    }),
  ],
  [
    'head-too-hot',
    'a head at the temperature that its model bears',
    (n, beyond) => ({
      space: `air: {temperature: 20 .. ${114 - n / 10 + beyond / 10} degC, dew-point: 5 .. 9 degC}`,
      point: HEATED.replace('6 K', `${6 + n / 10} K`),
    }),
  ],
  [
    'hazard-caution',
    '50 kPa above the air outside',
    (n, beyond) => ({ space: `pressure: ${n} .. ${50 + beyond / 10} kPa(g), ${MEDIUM_AIR}` }),
  ],
];

it.each(EXAMPLES)('%s: %s is within it, a written digit beyond is not', (rule, _, at) => {
  const numbers = steps(1, 19, 2);
  expect(numbers.filter((n) => rulesFiring(at(n, 0)).includes(rule))).toEqual([]);
  expect(numbers.filter((n) => rulesFiring(at(n, 1)).includes(rule))).toEqual(numbers);
});
