import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CONDUCTORS_SOLD,
  conductorOf,
  conductorResistance,
} from '../../../server/src/physics/electrical/conductors.ts';
import {
  loopLevelOf,
  maximumLoopLoad,
  voltageLeftOnLoop,
} from '../../../server/src/physics/electrical/current-loop.ts';
import {
  cableLoopResistance,
  resistiveConductance,
  smallestConductorThatWorks,
  voltageAtLoad,
} from '../../../server/src/physics/electrical/supply-cable.ts';
import { anyBetween } from '../any-between.ts';

describe('conductors', () => {
  it.each([
    [0.5, 39.0],
    [0.75, 26.0],
    [1, 19.5],
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
    [6, 3.3],
  ])('IEC 60228 table 3, plain copper: %f mm², %f ohm/km', (squareMillimetres, ohmPerKilometre) => {
    expect(conductorOf(squareMillimetres * 1e-6).resistancePerMetre * 1000).toBeCloseTo(ohmPerKilometre, 9);
  });

  it('sizes below 0.5 mm² are marked as not of IEC 60228', () => {
    expect(conductorOf(0.34e-6).source).toContain('IEC 60228 starts at 0.5 mm²');
  });

  it('ASTM B258 geometry: 22 AWG of 0.326 mm², 53.0 ohm/km solid; the cautious value lies above, by up to 20 %', () => {
    const perKilometre = conductorOf(0.326e-6).resistancePerMetre * 1000;
    expect(perKilometre).toBeGreaterThan(52.96);
    expect(perKilometre).toBeLessThan(52.96 * 1.2);
  });

  it('are sold smallest first, each with less resistance than the one before', () => {
    const resistances = CONDUCTORS_SOLD.map((each) => each.resistancePerMetre);
    expect(resistances).toEqual(resistances.toSorted((a, b) => b - a));
  });

  it.each([
    [5, 1.063],
    [25, 0.981],
    [50, 0.895],
    [75, 0.822],
    [100, 0.761],
  ])(
    'IEC 60028 copper: back from %d °C to 20 °C the factor is %f (the table of IEC 60228 rounds the coefficient)',
    (celsius, factor) => {
      const conductor = conductorOf(0.5e-6);
      expect(conductorResistance(conductor, 1, 20) / conductorResistance(conductor, 1, celsius)).toBeCloseTo(factor, 3);
    },
  );
});

describe('voltage at the load', () => {
  it('by hand: 24 V, 10 ohm, 8 W draws 0.4 A and leaves 20 V', () => {
    expect(voltageAtLoad(24, 10, { constantPower: 8, conductance: 0 })).toEqual({ ok: true, value: 20 });
  });

  it('by hand: a resistive load is a voltage divider, 90 ohm behind 10 ohm leaves 21.6 V of 24 V', () => {
    const reached = voltageAtLoad(24, 10, { constantPower: 0, conductance: 1 / 90 });
    expect(reached.ok && reached.value).toBeCloseTo(21.6, 12);
  });

  it('no load and no cable leave the source voltage', () => {
    expect(voltageAtLoad(24, 0, { constantPower: 100, conductance: 1 })).toEqual({ ok: true, value: 24 });
    expect(voltageAtLoad(24, 10, { constantPower: 0, conductance: 0 })).toEqual({ ok: true, value: 24 });
  });

  it('maximum power transfer: 24 V through 10 ohm brings 14.4 W at half the voltage, and not more', () => {
    const atMost = voltageAtLoad(24, 10, { constantPower: 14.4, conductance: 0 });
    expect(atMost.ok && atMost.value).toBeCloseTo(12, 6);
    const more = voltageAtLoad(24, 10, { constantPower: 14.5, conductance: 0 });
    expect(more).toEqual({ ok: false, problem: { kind: 'cable-cannot-deliver', maximumPower: 14.4 } });
  });

  it("Thévenin's theorem: beside 90 ohm the same source is one of 21.6 V behind 9 ohm, and brings 12.96 W", () => {
    const conductance = 1 / 90;
    const atMost = voltageAtLoad(24, 10, { constantPower: 12.96 - 1e-9, conductance });
    // A billionth of a watt below the most leaves √(9 · 1e-9) V over half the voltage.
    expect(atMost.ok && atMost.value).toBeCloseTo(10.8, 3);
    const more = voltageAtLoad(24, 10, { constantPower: 13, conductance });
    expect(more.ok ? undefined : more.problem.maximumPower).toBeCloseTo(12.96, 12);
  });

  it('balances power: what the source gives is what the cable and the loads take', () => {
    const source = anyBetween(5, 60);
    const resistance = anyBetween(0.001, 100);
    const power = anyBetween(0, 20);
    const heater = anyBetween(0, 20);
    fc.assert(
      fc.property(source, resistance, power, heater, (volts, ohms, constantPower, heaterWatts) => {
        const conductance = resistiveConductance(heaterWatts, 24);
        const reached = voltageAtLoad(volts, ohms, { constantPower, conductance });
        if (!reached.ok) {
          expect(reached.problem.maximumPower).toBeLessThan(constantPower);
          return;
        }
        const current = (volts - reached.value) / ohms;
        const taken = current ** 2 * ohms + constantPower + conductance * reached.value ** 2;
        // The current is a small difference of two voltages: 1e-12 of the voltage over the resistance is lost in it.
        expect(Math.abs(volts * current - taken)).toBeLessThan(1e-9 * (1 + volts ** 2 / ohms));
        expect(reached.value).toBeLessThanOrEqual(volts);
      }),
    );
  });
});

describe('conductor that works', () => {
  const cable = { length: 60, celsius: 50 };
  const load = { constantPower: 4.6, conductance: 0 };

  it('is the smallest: the next smaller one leaves too little', () => {
    const found = smallestConductorThatWorks(24, cable, load, 22.5);
    expect(found?.crossSection).toBe(0.5e-6);
    const smaller = voltageAtLoad(24, cableLoopResistance(conductorOf(0.34e-6), cable), load);
    expect(smaller.ok && smaller.value).toBeLessThan(22.5);
  });

  it('may leave just what is required: no load gets all of the source voltage through the smallest', () => {
    const nothing = { constantPower: 0, conductance: 0 };
    expect(smallestConductorThatWorks(24, cable, nothing, 24)).toBe(CONDUCTORS_SOLD[0]);
  });

  it('is told missing where none reaches the voltage', () => {
    expect(smallestConductorThatWorks(24, { length: 5000, celsius: 50 }, load, 22.5)).toBeUndefined();
  });
});

describe('current loop', () => {
  it('general loop-load equation: 24 V less 12 V at 22 mA carries 545 ohm, to half an ohm', () => {
    expect(Math.abs(maximumLoopLoad(24, 12) - 545)).toBeLessThan(0.5);
  });

  it('at the largest load just the minimum voltage is left', () => {
    expect(voltageLeftOnLoop(24, maximumLoopLoad(24, 9))).toBeCloseTo(9, 12);
  });

  it('a supply below the minimum carries no load', () => {
    expect(maximumLoopLoad(8, 9)).toBe(0);
  });

  it.each([
    [0, 'failure-low'],
    [3.6, 'failure-low'],
    [3.7, 'undefined-low'],
    [3.8, 'measuring'],
    [20.5, 'measuring'],
    [20.7, 'undefined-high'],
    [21, 'failure-high'],
    [22, 'failure-high'],
  ])('NAMUR NE 43: %f mA is %s', (milliamperes, level) => {
    expect(loopLevelOf(milliamperes * 1e-3)).toBe(level);
    expect(loopLevelOf(milliamperes / 1000)).toBe(level);
  });
});
