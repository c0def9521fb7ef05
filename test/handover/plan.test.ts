import { describe, expect, it } from 'vitest';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';
import { handoverSteps, stepOfKey } from '../../server/src/handover/plan.ts';
import { type HandoverStep, stepKeys } from '../../server/src/handover/step.ts';
import { assessedPoint } from '../evaluate/assessed-point.ts';
import { factsById } from '../evaluate/facts-by-id.ts';

const KILN = '{pressure: 99 kPa, air: {temperature: 60 .. 75 degC, humidity: 35 .. 80 %RH, speed: 2 .. 4 m/s}}';

const HEATED =
  'humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K, set-at: site}, mounting: {insertion: 200 mm, attitude: head-down}}, ' +
  'air-temperature-probe: {model: slim, mounting: {insertion: 180 mm, spacing: 120 mm, position: below}}, ' +
  'reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: 5 %RH}, dew-point: {}}';

function pointWith(point: string, space = KILN): PointEvaluation {
  return assessedPoint({ space, point });
}

const names = (point: PointEvaluation): readonly string[] => handoverSteps(point).map(({ name }) => name);

function stepOf(point: PointEvaluation, name: string): HandoverStep {
  const step = handoverSteps(point).find((candidate) => candidate.name === name);
  if (step === undefined) throw new RangeError(`no step ${name} among ${names(point).join(', ')}`);
  return step;
}

describe('the handover plan', () => {
  it('goes in the order of work, from the bench to the running process', () => {
    const point = pointWith(
      `${HEATED}, supply: {voltage: 24 V, cable: {length: 20 m, conductor: 0.75 mm2}}, ` +
        'signals: {AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH, on-fault: 21 mA}}, ' +
        'alarms: {too-wet: {quantity: relative-humidity, above: 78 %RH, clear: 75 %RH, delay: 60 s}}, ' +
        'checks: {interval: 12 months, method: saturated-salt, salts: [NaCl], at: 25 degC, heater: off}',
      `{hazards: [hot-surface], ${KILN.slice(1)}`,
    );
    expect(names(point)).toEqual([
      'hazards-seen-to',
      'check-before-fitting',
      'humidity-probe-fitted',
      'air-temperature-probe-fitted',
      'supply-measured',
      'heater-on',
      'head-rise-seen',
      'air-temperature-assigned',
      'ao1-forced',
      'ao1-fault-seen',
      'too-wet-proven',
      'first-comparison',
    ]);
  });

  it('has no step for what the point does not have', () => {
    expect(names(pointWith('humidity-probe: {model: plain}, reports: {relative-humidity: {}}', '{}'))).toEqual([]);
  });

  it('names steps apart within a point, in kebab-case', () => {
    const point = pointWith(
      `${HEATED}, signals: {AO_1: {kind: voltage, quantity: dew-point, span: 0 .. 80 degC}, AO2: {kind: voltage, quantity: dew-point, span: 0 .. 80 degC}}`,
    );
    expect(new Set(names(point)).size).toBe(names(point).length);
    for (const name of names(point)) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('carries in every number a fact of the point or an entry of its file', () => {
    const point = pointWith(`${HEATED}, supply: {voltage: 24 V, cable: {length: 20 m, conductor: 0.75 mm2}}`);
    for (const { facts } of handoverSteps(point)) {
      for (const fact of facts)
        expect([...factsById(point).values(), ...factsById(point.space).values()]).toContain(fact);
    }
  });
});

describe('what a step says', () => {
  it.each([
    ['factory', 'The heater was ordered switched on: see that it is, continuous, 6 K above the air.'],
    ['site', 'Switch the heater on: continuous, 6 K above the air.'],
  ])('of a heater that is set at the %s', (setAt, todo) => {
    expect(stepOf(pointWith(HEATED.replace('set-at: site', `set-at: ${setAt}`)), 'heater-on').todo).toBe(todo);
  });

  it('of the service cable: its notice of low supply is expected, is no fault, and clears on the real supply', () => {
    const point = pointWith(`${HEATED}, supply: {kind: service-cable, voltage: 12 V}`);
    expect(stepOf(point, 'heater-on').expect).toMatch(
      /on a service cable a notice of low supply is to be expected: it is no fault, and clears on the real supply, which has to bring 18 V\.$/,
    );
    expect(names(point)).not.toContain('supply-measured');
  });

  it('of the supply: 24 V less the drop of 20 m of 0.75 mm² (IEC 60228, 26 Ω/km out and back) at 4.6 W', () => {
    const { expect: seen } = stepOf(
      pointWith(`${HEATED}, supply: {voltage: 24 V, cable: {length: 20 m, conductor: 0.75 mm2}}`),
      'supply-measured',
    );
    // By hand at 32 °C: R = 2 · 20 m · 26 Ω/km · (1 + 0.00393 · 12) = 1.089 Ω; V = 12 + √(144 − 1.089 · 4.6) = 23.79 V.
    expect(seen).toBe(
      'It is at least 23.8 V, as computed for this cable; 10 V to 30 V are allowed, and the heater needs 18 V.',
    );
  });

  it('of a current loop: 4, 12 and 20 mA at the ends and the middle of its span; of 0 to 10 V half of it', () => {
    const signals =
      'signals: {AO1: {kind: current-loop, quantity: dew-point, span: 0 .. 80 degC}, AO2: {kind: voltage, quantity: relative-humidity, span: 20 .. 100 %RH}}';
    const point = pointWith(`${HEATED}, ${signals}`);
    expect(stepOf(point, 'ao1-forced').expect).toMatch(/^4 mA at 0 °C, 12 mA at 40 °C, 20 mA at 80 °C;/);
    expect(stepOf(point, 'ao2-forced').expect).toMatch(/^0 V at 20 %RH, 5 V at 60 %RH, 10 V at 100 %RH;/);
  });

  it('of a register: the numbers that stand in it, value over scale', () => {
    const point = pointWith(
      `${HEATED}, signals: {HR40: {kind: register, quantity: relative-humidity, device: 1, address: 40, format: int16, scale: 0.01 %RH}}`,
    );
    expect(stepOf(point, 'hr40-forced').expect).toMatch(/^3500 at 35 %RH, 5750 at 57.5 %RH, 8000 at 80 %RH;/);
  });

  it.each([
    ['21 mA', /goes to 21 mA\. The receiver takes that for a failure \(NAMUR NE 43\) and says so\.$/],
    ['20.2 mA', /must be told to take that for a failure: NAMUR NE 43 does not\.$/],
  ])('of a fault at %s, by the levels of NAMUR NE 43', (onFault, words) => {
    const point = pointWith(
      `${HEATED}, signals: {AO1: {kind: current-loop, quantity: dew-point, span: 0 .. 80 degC, on-fault: ${onFault}}}`,
    );
    expect(stepOf(point, 'ao1-fault-seen').expect).toMatch(words);
  });

  it('of the salts: what OIML R 121:1996, table 1, gives at 25 °C, with its uncertainty', () => {
    const point = pointWith(
      `${HEATED}, checks: {interval: 12 months, method: saturated-salt, salts: [NaCl, K2SO4], at: 25 degC, heater: off}`,
    );
    const { todo, expect: seen } = stepOf(point, 'check-before-fitting');
    expect(todo).toContain('with its heater off and its head cold');
    expect(seen).toContain('75.3 %RH ± 0.2 %RH over NaCl and 97.3 %RH ± 0.5 %RH over K2SO4');
  });

  it('of hazards: their cautions, and that local codes decide', () => {
    const point = pointWith(HEATED, `{hazards: [confined-space, flammable-zone-2], ${KILN.slice(1)}`);
    expect(stepOf(point, 'humidity-probe-fitted').caution).toMatch(
      /Nobody goes in alone .* Local codes and licensed practice decide/,
    );
    expect(stepOf(point, 'heater-on').caution).toMatch(/certified for the zone/);
    expect(stepOf(point, 'heater-on').caution).not.toMatch(/goes in alone/);
  });
});

describe('a step in a visit', () => {
  it('goes by its name, or by its name with the tag behind it, in any case', () => {
    const point = pointWith(HEATED);
    const step = stepOf(point, 'heater-on');
    expect(stepKeys(step)).toEqual(['heater-on', 'heater-on-P-1']);
    for (const key of ['heater-on', 'heater-on-P-1', 'heater-on-p-1', 'Heater-On'])
      expect(stepOfKey(key, point)).toBe(step);
    expect(stepOfKey('heater-onn', point)).toBeUndefined();
  });
});
