import psychrolib from 'psychrolib';
import { expect, it } from 'vitest';
import { BASIS, describeWithDuckDB, summaryOf } from './small-log.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

/** Rows of unequal length: 60 °C for one minute, 65 °C for two, 75 °C for one; the last row stands for no time. */
const UNEQUAL = `t,T,Td
2026-09-08T08:00:00Z,60,50
2026-09-08T08:01:00Z,65,50
2026-09-08T08:03:00Z,75,50
2026-09-08T08:04:00Z,60,50
`;

describeWithDuckDB('what a recording says', () => {
  it('time counts, not rows: each row stands until the next', async () => {
    const { extent, outside } = await summaryOf(UNEQUAL);
    expect(extent).toMatchObject({ rows: 4, seconds: 240, usedSeconds: 240, step: 60 });
    expect(extent).toMatchObject({ from: '2026-09-08T08:00:00Z', to: '2026-09-08T08:04:00Z' });
    expect(outside).toMatchObject({ seconds: 60, share: 0.25 });
  });

  it('says how far and how long each bound was passed, and when', async () => {
    const { outside } = await summaryOf(UNEQUAL);
    const [excess, other] = outside.envelopes[0]?.excesses ?? [];
    expect(excess).toMatchObject({ quantity: 'air-temperature', side: 'above', limit: 70, seconds: 60, farthest: 75 });
    expect(excess?.at).toMatchObject({ time: '2026-09-08T08:03:00Z', airCelsius: 75, dewPointCelsius: 50 });
    // At 75 °C and a dew point of 50 °C the air has 32 %RH: ew(50)/ew(75) = 12.35/38.60 kPa by the steam table.
    expect(other).toBeUndefined();
  });

  it('the humidity at the sensor, heated and not, agrees with psychrolib within 0.1 %RH', async () => {
    // psychrolib takes ideal air: the enhancement factors of dew point and air temperature cancel but for 0.05 %RH.
    const { sensors } = await summaryOf(UNEQUAL);
    const vapour = psychrolib.GetSatVapPres(50);
    expect(sensors.map(({ rise }) => rise)).toEqual([0, 6]);
    expect(Math.abs((sensors[0]?.highest ?? 0) - vapour / psychrolib.GetSatVapPres(60))).toBeLessThan(0.001);
    expect(Math.abs((sensors[1]?.highest ?? 0) - vapour / psychrolib.GetSatVapPres(66))).toBeLessThan(0.001);
    expect(sensors.map(({ leastMargin }) => leastMargin?.kelvin)).toEqual([10, 16]);
  });

  it('quantiles are those of the time: the wettest minute of four lies above the 75 % quantile', async () => {
    const { sensors } = await summaryOf(UNEQUAL);
    const at60 = psychrolib.GetSatVapPres(50) / psychrolib.GetSatVapPres(60);
    const at65 = psychrolib.GetSatVapPres(50) / psychrolib.GetSatVapPres(65);
    const quantile = (wanted: number) => sensors[0]?.quantiles.find(({ share }) => share === wanted)?.value ?? 0;
    // Bins of 0.1 %RH, and 0.05 %RH for the enhancement.
    expect(Math.abs(quantile(0.95) - at60)).toBeLessThan(0.0015);
    expect(Math.abs(quantile(0.5) - at65)).toBeLessThan(0.0015);
  });

  it('counts the time above the limit of each sensor by that limit', async () => {
    const wet = 't,T,RH\n0,60,95\n60,60,85\n120,60,70\n180,60,70\n';
    const { sensors } = await summaryOf(wet);
    // Unheated above 90 %RH: one minute. Heated by 6 K at 60 °C: 95 %RH becomes 72 %RH, never above 80 %RH.
    expect(sensors.map(({ secondsAboveLimit }) => secondsAboveLimit)).toEqual([60, 0]);
  });

  it('of several phases the nearest tells what was passed; inside any of them is inside', async () => {
    const phases = [
      { phase: 'warm-up', bounds: [{ quantity: 'air-temperature', low: 10, high: 50 }] },
      { phase: 'drying', bounds: [{ quantity: 'air-temperature', low: 50, high: 70 }] },
    ] as const;
    const basis = { ...BASIS, envelopes: phases };
    const { outside } = await summaryOf('t,T,RH\n0,20,50\n60,60,50\n120,72,50\n180,60,50\n', { basis });
    expect(outside.seconds).toBe(60);
    expect(outside.envelopes.map(({ insideSeconds }) => insideSeconds)).toEqual([60, 60]);
    expect(outside.envelopes.map(({ excesses }) => excesses.length)).toEqual([0, 1]);
  });

  it('the bound that covers a log leaves out 0.1 % of its time at most', async () => {
    // 3,000 s at 69 °C, 1,000 s at 71 °C, 2 s at 90 °C of 4,002 s: 0.1 % is 4 s, so that the 90 °C may stay outside.
    const rows = Array.from(
      { length: 4003 },
      (_, s) => `${s},${s < 3000 ? 69 : s < 4000 ? 71 : s < 4002 ? 90 : 69},50`,
    );
    const { outside } = await summaryOf(`t,T,RH\n${rows.join('\n')}\n`);
    const excess = outside.envelopes[0]?.excesses[0];
    expect(excess).toMatchObject({ seconds: 1002, farthest: 90 });
    expect(excess?.covering).toBeGreaterThanOrEqual(71);
    expect(excess?.covering).toBeLessThanOrEqual(71.05);
  });

  it('a rise of 0.5 K/min over 15 minutes is found, and a jump of one row is none', async () => {
    const rows = Array.from({ length: 60 }, (_, minute) => {
      const celsius = 55 + 0.5 * Math.max(0, Math.min(15, minute - 20)) + (minute === 50 ? 5 : 0);
      return `${minute * 60},${celsius},50`;
    });
    const { ramps } = await summaryOf(`t,T,RH\n${rows.join('\n')}\n`);
    // The jump of 5 K in one row of a minute is 0.5 K/min over the ten minutes before it, no more than the ramp.
    expect(ramps.rising?.perSecond).toBeCloseTo(0.5 / 60, 9);
  });

  it('the density holds all of the time that has a dew point', async () => {
    const { density, extent } = await summaryOf(UNEQUAL);
    expect(density.cells).toEqual([
      [60, 50, 60],
      [65, 50, 120],
      [75, 50, 60],
    ]);
    expect(density.cells.reduce((sum, [, , seconds]) => sum + seconds, 0)).toBe(extent.usedSeconds);
  });

  it('supports the envelope of its extremes and of 99 % of its time', async () => {
    const rows = Array.from({ length: 1001 }, (_, s) => `${s},${s === 500 ? 90 : 60},50`);
    const { ranges } = await summaryOf(`t,T,RH\n${rows.join('\n')}\n`);
    const air = ranges['air-temperature'];
    expect(air).toMatchObject({ lowest: 60, highest: 90 });
    // The quantiles lie in the bin of 60 °C, which is 0.05 K wide.
    for (const quantile of [air?.low ?? 0, air?.high ?? 0]) {
      expect(quantile).toBeGreaterThanOrEqual(60);
      expect(quantile).toBeLessThanOrEqual(60.05);
    }
  });

  it('speeds are held against their bound where the log has them', async () => {
    const bounds = [{ quantity: 'speed', low: 0.5, high: 3 }] as const;
    const basis = { ...BASIS, envelopes: [{ bounds }] };
    const { outside, ranges } = await summaryOf('t,T,RH,v\n0,60,50,0.2\n60,60,50,1\n120,60,50,1\n', { basis });
    expect(outside.envelopes[0]?.excesses).toMatchObject([
      { quantity: 'speed', side: 'below', seconds: 60, farthest: 0.2 },
    ]);
    expect(ranges.speed).toMatchObject({ lowest: 0.2, highest: 1 });
  });
});
