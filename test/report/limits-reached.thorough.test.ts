/**
 * A pack is signed: where it says that a limit is kept, `check` must find nothing, and the other way round, above all
 * where the air reaches the limit exactly. Sites are drawn at random; what limits them is then set to what was computed.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { heldFacts } from '../../server/src/report/limits.ts';
import { FIXTURE_MODELS, TODAY } from '../evaluate/assessed-point.ts';

const SITE = fileUri('/fennmoor/fennmoor.dewsite.yaml');
const KIT = fileUri('/fennmoor/models.dewkit.yaml');
const SEED = Number(process.env['DEWRIGHT_SEED'] ?? 20_261_201);
const SITES_OF_EACH = 80;

/** A site without what limits it; in flow style without the braces. */
interface Site {
  readonly air: string;
  readonly space?: string;
  readonly point: string;
  readonly defaults?: string;
  readonly kit?: string;
}

interface Case {
  readonly rule: string;
  /** Of the fact that is limited. */
  readonly fact: RegExp;
  readonly side: 'at most' | 'at least';
  /** A unit of the bound, and how many of them make the canonical unit. */
  readonly unit: string;
  readonly perCanonical: number;
  /** Of the fact, what the bound is where that is reached exactly: tolerances are more than their parts. */
  readonly times?: number;
  /** A bound that is kept, so that something can be computed first, in the unit. */
  readonly loose: string;
  readonly site: (bound: string, air: Air) => Site;
}

/** What is drawn. */
interface Air {
  readonly coldest: number;
  readonly span: number;
  /** %RH */
  readonly wettest: number;
  readonly speed: number;
  readonly rise: number;
}

const AIR: fc.Arbitrary<Air> = fc.record({
  coldest: fc.integer({ min: 150, max: 600 }).map((tenths) => tenths / 10),
  span: fc.integer({ min: 1, max: 150 }).map((tenths) => tenths / 10),
  wettest: fc.integer({ min: 300, max: 880 }).map((tenths) => tenths / 10),
  speed: fc.integer({ min: 2, max: 30 }).map((tenths) => tenths / 10),
  rise: fc.integer({ min: 10, max: 80 }).map((tenths) => tenths / 10),
});

function air({ coldest, span, wettest, speed }: Air): string {
  return `temperature: ${coldest} .. ${coldest + span} degC, humidity: 20 .. ${wettest} %RH, speed: ${speed} .. ${speed + 1} m/s`;
}

const heated = (rise: number | string): string =>
  `humidity-probe: {model: heated, heater: {mode: continuous, rise: ${rise}, set-at: site}, mounting: {insertion: 200 mm}}`;
const WALL =
  'gradient: 0.5 K/m, wall: {thickness: 1.5 mm, material: stainless-steel, insulation: 60 mm, insulation-material: mineral-wool}';
const beside = (mounting: string, tolerance: string): string =>
  `air-temperature-probe: {model: slim, mounting: {${mounting}}}, reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: ${tolerance}}}`;
const CABLE = 'supply: {voltage: 24 V, cable: {length: 80 m, conductor: 0.5 mm2}}';

const throughCable = ({ rise, coldest }: Air): string =>
  `${heated(`${rise} K`)}, ${CABLE.replace('80 m', `${Math.round(coldest)} m`)}`;

const PERCENT = { unit: '%RH', perCanonical: 100 };
const KELVIN = { unit: 'K', perCanonical: 1 };
const VOLT = { unit: 'V', perCanonical: 1 };

/** A cost that may take a third of a tolerance. */
function costly(rule: string, kind: string, mounting: string, more = ''): Case {
  return {
    rule,
    fact: new RegExp(`^relative-humidity/${kind}-cost$`),
    side: 'at most',
    ...PERCENT,
    times: 3,
    loose: '90 %RH',
    site: (tolerance, drawn) => ({
      air: `${air(drawn)}${more}`,
      space: WALL,
      point: `${heated(`${drawn.rise} K`)}, ${beside(mounting, tolerance)}`,
    }),
  };
}

const CASES: readonly Case[] = [
  {
    rule: 'sensor-may-condense',
    fact: /^humidity-at-sensor$/,
    side: 'at most',
    ...PERCENT,
    loose: '99 %RH',
    site: (limit, drawn) => ({
      air: air(drawn),
      point: 'humidity-probe: {model: plain}',
      defaults: `margin: 0 K, unheated-humidity-limit: ${limit}`,
    }),
  },
  {
    rule: 'sensor-may-condense',
    fact: /^margin-to-dew-point$/,
    side: 'at least',
    ...KELVIN,
    loose: '0 K',
    site: (margin, drawn) => ({
      air: air(drawn),
      point: 'humidity-probe: {model: plain}',
      defaults: `unheated-humidity-limit: 99 %RH, margin: ${margin}`,
    }),
  },
  {
    rule: 'heater-rise-short',
    fact: /^humidity-at-sensor$/,
    side: 'at most',
    ...PERCENT,
    loose: '99 %RH',
    site: (limit, drawn) => ({
      air: air(drawn),
      point: heated(`${drawn.rise} K`),
      defaults: `sensor-humidity-limit: ${limit}`,
    }),
  },
  {
    rule: 'head-too-hot',
    fact: /^highest-head-temperature$/,
    side: 'at most',
    unit: 'degC',
    perCanonical: 1,
    loose: '120 degC',
    site: (highest, drawn) => ({
      air: air(drawn),
      point: heated(`${drawn.rise} K`),
      kit: FIXTURE_MODELS.replace('temperature: -40 .. 120 degC', `temperature: -40 .. ${highest}`),
    }),
  },
  {
    rule: 'heater-rise-unreachable',
    fact: /^rise-reachable$/,
    side: 'at least',
    ...KELVIN,
    loose: '0.1 K',
    site: (rise, drawn) => ({
      air: air(drawn),
      point: heated(rise),
      kit: FIXTURE_MODELS.replace('power: 4 W, kind: constant-power', 'power: 0.5 W, kind: constant-power'),
    }),
  },
  {
    rule: 'supply-out-of-range',
    fact: /^voltage-at-probe$/,
    side: 'at least',
    ...VOLT,
    loose: '1 V',
    site: (least, drawn) => ({
      air: air(drawn),
      point: throughCable(drawn),
      kit: FIXTURE_MODELS.replace(
        'supply: {voltage: 10 .. 30 V, power: 0.6 W}',
        `supply: {voltage: ${least.replace(' V', '')} .. 30 V, power: 0.6 W}`,
      ).replace('minimum-voltage: 18 V, ', ''),
    }),
  },
  {
    rule: 'heater-supply-low',
    fact: /^voltage-at-probe$/,
    side: 'at least',
    ...VOLT,
    loose: '1 V',
    site: (least, drawn) => ({
      air: air(drawn),
      point: throughCable(drawn),
      kit: FIXTURE_MODELS.replace('minimum-voltage: 18 V', `minimum-voltage: ${least}`),
    }),
  },
  {
    rule: 'loop-load-high',
    fact: /^signal\/AO1\/loop-voltage-left$/,
    side: 'at least',
    ...VOLT,
    loose: '1 V',
    site: (least, drawn) => ({
      air: air(drawn),
      point: `humidity-probe: {model: plain}, transmitter: {model: two-probes}, reports: {relative-humidity: {}}, signals: {AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH, load: ${Math.round(drawn.wettest)} ohm}}, ${CABLE}`,
      kit: FIXTURE_MODELS.replace('loop-minimum-voltage: 9 V', `loop-minimum-voltage: ${least}`),
    }),
  },
  {
    rule: 'tolerance-missed',
    fact: /^dew-point\/expanded-uncertainty$/,
    side: 'at most',
    ...KELVIN,
    loose: '50 K',
    site: (tolerance, drawn) => ({
      air: air(drawn),
      point: `humidity-probe: {model: plain}, reports: {dew-point: {tolerance: ${tolerance}}}`,
    }),
  },
  costly('insertion-short', 'stem-conduction', 'insertion: 40 mm, position: below, spacing: 300 mm'),
  costly('probes-too-close', 'head-warming', 'insertion: 200 mm, position: downstream, spacing: 50 mm'),
  costly('probes-too-far', 'gradient', 'insertion: 200 mm, position: below, spacing: 700 mm'),
  costly('response-too-slow', 'lag', 'insertion: 200 mm, position: below, spacing: 50 mm', ', ramp: 2 K/min'),
  {
    rule: 'resolution-coarse',
    fact: /^signal\/AO1\/resolution-error$/,
    side: 'at most',
    ...PERCENT,
    times: 10,
    loose: '90 %RH',
    site: (tolerance, drawn) => ({
      air: air(drawn),
      point: `humidity-probe: {model: plain}, transmitter: {model: two-probes}, reports: {relative-humidity: {tolerance: ${tolerance}}}, signals: {AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. ${Math.ceil(drawn.wettest) + 5} %RH, receiver: input-8}}, supply: {voltage: 24 V}`,
    }),
  },
];

/** One for all sites, as an editor has one for all edits. */
const workspace = new Workspace({ today: () => TODAY });
let kitInWorkspace = FIXTURE_MODELS;
workspace.set(KIT, kitInWorkspace);
workspace.markWhole();

/** What pack and check say of the limit of a rule at the one point of a site. */
interface Said {
  readonly value: number;
  readonly packKeeps: boolean;
  readonly checkFinds: boolean;
}

function saidOf(
  { rule, fact }: Case,
  { air: envelope, space, point, defaults = '', kit = FIXTURE_MODELS }: Site,
): Said | undefined {
  if (kit !== kitInWorkspace) workspace.set(KIT, kit);
  kitInWorkspace = kit;
  workspace.set(
    SITE,
    `dewright: 1
site: {id: fennmoor, surroundings: 5 .. 32 degC, kits: [models.dewkit.yaml], defaults: {${defaults}}}
spaces:
  room: {pressure: 101.325 kPa, air: {${envelope}}${space === undefined ? '' : `, ${space}`}}
points:
  P-1: {space: room, ${point}}
`,
  );
  const analysis = workspace.analysis(SITE);
  const evaluated = analysis?.content.kind === 'site' ? analysis.content.site.points.get('P-1') : undefined;
  const held = evaluated === undefined ? [] : heldFacts(evaluated);
  const limited = held.find((each) => each.rule === rule && fact.test(each.fact.id));
  if (analysis === undefined || limited === undefined) return undefined;
  const checkFinds = analysis.findings.some((finding) => finding.rule === rule);
  return { value: limited.fact.value, packKeeps: limited.isKept, checkFinds };
}

/** Of a bound, how far beyond it a number still counts as reached by rounding in the tests: none is drawn so close. */
const BEYOND = 1e-5;

describe.each(CASES)('$rule ($fact)', (limited) => {
  const boundAt = (value: number): string => `${value * limited.perCanonical * (limited.times ?? 1)} ${limited.unit}`;

  it(`pack and check agree where the air reaches the limit exactly, and beyond it, at ${SITES_OF_EACH} sites`, () => {
    let reached = 0;
    fc.assert(
      fc.property(AIR, (drawn) => {
        const said = (bound: string): Said | undefined => saidOf(limited, limited.site(bound, drawn));
        const first = said(limited.loose);
        if (first === undefined || !(Math.abs(first.value) > 1e-4)) return;
        const exactly = said(boundAt(first.value));
        const beyond = said(
          boundAt(first.value + (limited.side === 'at least' ? 1 : -1) * BEYOND * Math.abs(first.value)),
        );
        expect(exactly).toMatchObject({ packKeeps: true, checkFinds: false });
        expect(beyond).toMatchObject({ packKeeps: false, checkFinds: true });
        reached += 1;
      }),
      { numRuns: SITES_OF_EACH, seed: SEED },
    );
    expect(reached).toBeGreaterThan(SITES_OF_EACH * 0.9);
  });
});
