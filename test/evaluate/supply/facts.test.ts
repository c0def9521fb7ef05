import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factsById } from '../facts-by-id.ts';
import { installedPoint, knownValue, missingOf } from '../installed-point.ts';

const ROOM = '{air: {temperature: 18 .. 24 degC, humidity: 60 .. 92 %RH, speed: 0.2 .. 1 m/s}}';
const HEATED = '{model: heated, heater: {mode: continuous, rise: 5 K}}';

function factsOf(supply: string, { probe = HEATED, more = '', surroundings = '5 .. 50 degC' } = {}) {
  const point = `humidity-probe: ${probe}, supply: ${supply}${more}`;
  return factsById(installedPoint({ space: ROOM, point, header: `surroundings: ${surroundings}` }));
}

/** IEC 60228 table 3, 0.5 mm², class 5: 39.0 ohm/km at 20 °C, two conductors of 60 m, annealed copper at 50 °C. */
const OHM = (2 * 0.06 * 39.0 * (234.5 + 50)) / 254.5;

describe('voltage at the probe', () => {
  it('IEC 60228 table 3 and the quadratic by hand: 24 V, 60 m of 0.5 mm² at 50 °C, 4.6 W', () => {
    const voltage = knownValue(
      factsOf('{voltage: 24 V, cable: {length: 60 m, conductor: 0.5 mm2}}'),
      'voltage-at-probe',
    );
    expect(voltage).toBeCloseTo((24 + Math.sqrt(24 ** 2 - 4 * OHM * 4.6)) / 2, 9);
    expect(voltage).toBeCloseTo(22.95, 2);
  });

  it('a resistive heater divides the voltage, Ohm: 4 W at 24 V is 144 ohm beside 0.6 W of electronics', () => {
    const probe = '{model: resistive, heater: {mode: continuous, rise: 5 K}}';
    const facts = factsOf('{voltage: 24 V, cable: {length: 60 m, conductor: 0.5 mm2}}', { probe });
    const voltage = knownValue(facts, 'voltage-at-probe');
    // Kirchhoff: what the cable drops is its resistance times both currents. To the last digits of the square root.
    expect(24 - voltage).toBeCloseTo(OHM * (0.6 / voltage + voltage / 144), 9);
  });

  it('without a cable the whole voltage reaches the probe, and with a cable but no surroundings it is at 20 °C', () => {
    expect(knownValue(factsOf('{voltage: 24 V}'), 'voltage-at-probe')).toBe(24);
    const point = `humidity-probe: ${HEATED}, supply: {voltage: 24 V, cable: {length: 60 m, conductor: 0.5 mm2}}`;
    const facts = factsById(installedPoint({ space: ROOM, point, header: 'title: Fennmoor' }));
    const ohm = 2 * 0.06 * 39.0;
    expect(knownValue(facts, 'voltage-at-probe')).toBeCloseTo((24 + Math.sqrt(24 ** 2 - 4 * ohm * 4.6)) / 2, 9);
  });

  it('a transmitter adds its own power', () => {
    const facts = factsOf('{voltage: 24 V, cable: {length: 60 m, conductor: 0.5 mm2}}', {
      more: ', transmitter: {model: loop}',
    });
    expect(knownValue(facts, 'voltage-at-probe')).toBeCloseTo((24 + Math.sqrt(24 ** 2 - 4 * OHM * 6.6)) / 2, 9);
  });

  it('a longer cable never raises it, and a heater that is on never does', () => {
    const length = fc.integer({ min: 1, max: 200 });
    fc.assert(
      fc.property(length, length, (one, other) => {
        const [short, long] = [Math.min(one, other), Math.max(one, other)];
        const at = (metres: number, probe: string): number => {
          const supply = `{voltage: 24 V, cable: {length: ${metres} m, conductor: 1 mm2}}`;
          return knownValue(factsOf(supply, { probe }), 'voltage-at-probe');
        };
        expect(at(long, HEATED)).toBeLessThanOrEqual(at(short, HEATED));
        expect(at(long, HEATED)).toBeLessThan(at(long, '{model: heated}'));
      }),
      { numRuns: 20 },
    );
  });
});

describe('conductor needed', () => {
  it('is none while the voltage is enough', () => {
    const facts = factsOf('{voltage: 24 V, cable: {length: 60 m, conductor: 0.5 mm2}}');
    expect(facts.has('conductor-needed')).toBe(false);
  });

  it('is the least size sold that brings the 18 V of the heater: 0.34 mm² at 150 m, where 0.25 mm² brings 17.4 V', () => {
    const facts = factsOf('{voltage: 24 V, cable: {length: 150 m, conductor: 0.25 mm2}}');
    expect(knownValue(facts, 'voltage-at-probe')).toBeLessThan(18);
    expect(knownValue(facts, 'conductor-needed')).toBeCloseTo(0.34e-6, 12);
    const mended = factsOf('{voltage: 24 V, cable: {length: 150 m, conductor: 0.34 mm2}}');
    expect(knownValue(mended, 'voltage-at-probe')).toBeGreaterThanOrEqual(18);
  });

  it('is not to be had where the supply itself gives too little', () => {
    const facts = factsOf('{voltage: 12 V, cable: {length: 10 m, conductor: 0.25 mm2}}');
    expect(missingOf(facts, 'conductor-needed')).toBe('no conductor sold brings enough');
  });

  it('a cable that cannot deliver tells the most it brings: Vs²/(4 R), by hand', () => {
    const facts = factsOf('{voltage: 24 V, cable: {length: 120 m, conductor: 0.14 mm2}}');
    // DIN VDE 0295 type table: 138 ohm/km.
    const ohm = (2 * 0.12 * 138 * (234.5 + 50)) / 254.5;
    expect(knownValue(facts, 'cable-power-limit')).toBeCloseTo(24 ** 2 / (4 * ohm), 9);
    expect(knownValue(facts, 'supply-power')).toBeCloseTo(4.6, 12);
    expect(missingOf(facts, 'voltage-at-probe')).toBe('the cable cannot carry this power at any voltage');
    expect(knownValue(facts, 'conductor-needed')).toBeCloseTo(0.25e-6, 12);
  });
});

describe('current loops', () => {
  const loop = (load: string) =>
    factsOf('{voltage: 24 V}', {
      more: `, transmitter: {model: loop}, signals: {AO1: {kind: current-loop, quantity: dew-point, span: 0 .. 50 degC${load}}}`,
    });

  it('NAMUR NE 43 and the general load line: 24 V and 12 V for the transmitter carry 545 ohm at 22 mA', () => {
    expect(knownValue(loop(', load: 250 ohm'), 'signal/AO1/largest-loop-load')).toBeCloseTo(545.45, 2);
    expect(knownValue(loop(', load: 250 ohm'), 'signal/AO1/loop-voltage-left')).toBeCloseTo(24 - 250 * 0.022, 12);
  });

  it('a loop without a load has no voltage left to tell of', () => {
    expect(loop('').has('signal/AO1/loop-voltage-left')).toBe(false);
    expect(loop('').has('signal/AO1/largest-loop-load')).toBe(true);
  });
});

it('what the kit or the file does not give is said', () => {
  expect(missingOf(factsOf('{kind: service-cable}'), 'voltage-at-probe')).toBe('no supply voltage is given');
  const unknown = factsOf('{voltage: 24 V}', { probe: '{model: nobody-knows-it}' });
  expect(missingOf(unknown, 'voltage-at-probe')).toBe('the kit gives no power of the humidity probe');
  const unread = factsOf('{voltage: 24 V, cable: {length: sixty, conductor: 0.5 mm2}}');
  expect(missingOf(unread, 'voltage-at-probe')).toBe('the cable has no length');
});
