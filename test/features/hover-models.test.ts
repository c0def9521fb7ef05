import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { cursorIn, KIT, SITE } from './fennmoor.ts';
import { openAt } from './marked-files.ts';

/** The first section of the hover on a model that a point names, line by line. */
function summaryOf(model: string, kit = KIT): readonly string[] {
  const kits = { 'kits/fennmoor.dewkit.yaml': kit };
  const { analysis, offset } = openAt('fennmoor.dewsite.yaml', cursorIn(SITE, `model: |${model}`), kits);
  const sections = hoverAt(analysis, offset)?.markdown.split('\n\n') ?? [];
  return (
    sections
      .find((section) => section.includes('kits/fennmoor'))
      ?.replaceAll('\\', '')
      .split('\n') ?? []
  );
}

describe('the hover on a model says what the kit says of it', () => {
  it('of a humidity probe its ranges, its heater and its supply', () => {
    expect(summaryOf('hp-heated')).toEqual([
      '**Heated humidity probe, 80 °C** (kits/fennmoor.dewkit.yaml)',
      '- relative humidity 0 … 100 %RH',
      '- temperature -40 … 120 °C',
      '- pressure 50 … 1000 kPa',
      '- heater 4 W, up to 20 K above the air',
      '- supply 10 … 30 V',
    ]);
  });

  it.each([
    ['power: 4 W, ', 'heater up to 20 K above the air'],
    [', maximum-rise: 20 K', 'heater 4 W'],
    ['heater: {power: 4 W, kind: constant-power, minimum-voltage: 18 V, maximum-rise: 20 K}', 'no heater'],
  ])('where the kit leaves out %s: %s', (left, words) => {
    expect(summaryOf('hp-heated', KIT.replace(left, ''))).toContain(`- ${words}`);
  });

  it('of an air-temperature probe its range and its class, under its id where it has no title', () => {
    expect(summaryOf('tp-slim')).toEqual([
      '**tp-slim** (kits/fennmoor.dewkit.yaml)',
      '- temperature -40 … 180 °C',
      '- IEC 60751 class A',
    ]);
  });
});
