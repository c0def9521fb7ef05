import { describe, expect, it } from 'vitest';
import { type OutlineItem, outlineOf } from '../../server/src/features/reading/outline.ts';
import { FENNMOOR, KIT, SITE, VISIT } from './fennmoor.ts';
import { openAt } from './marked-files.ts';

function lines(items: readonly OutlineItem[], indent = ''): readonly string[] {
  return items.flatMap(({ name, kind, detail, children }) => [
    `${indent}${name} (${kind})${detail === '' ? '' : ` ${detail}`}`,
    ...lines(children, `${indent}  `),
  ]);
}

describe('the outline', () => {
  it('of a site names spaces and points with what is computed of them', () => {
    const { analysis } = openAt('fennmoor.dewsite.yaml', `|${SITE}`, FENNMOOR);
    expect(lines(outlineOf(analysis)).join('\n')).toMatchInlineSnapshot(`
      "dewright (section) 1
      site (section) Fennmoor Timber
      spaces (section)
        kiln-2 (space) dew point 34.7 … 74.9 °C
          air (part)
        hall (space) dew point 2 … 18 °C
          air (part)
      points (section)
        K2-MT-101 (point) kiln-2, 64 %RH at the sensor
          humidity-probe (part) hp-heated
            heater (part) continuous
            mounting (part)
          air-temperature-probe (part) tp-slim
          reports (part)
            relative-humidity (quantity) 35 … 88 %RH
            dew-point (quantity) 34.7 … 74.9 °C
          supply (part)
            cable (part)
          signals (part)
            AO1 (signal) relative-humidity
        K2-MT-102 (point) kiln-2, 64 %RH at the sensor
          humidity-probe (part) hp-heated
            heater (part) continuous
          reports (part)
            relative-humidity (quantity) 35 … 88 %RH"
    `);
  });

  it('of a kit names the models by their titles', () => {
    const { analysis } = openAt('kits/fennmoor.dewkit.yaml', `|${KIT}`, FENNMOOR);
    expect(lines(outlineOf(analysis)).filter((line) => line.includes('(model)'))).toEqual([
      '  hp-heated (model) Heated humidity probe, 80 °C',
      '  hp-plain (model) Plain humidity probe',
      '  tp-slim (model)',
      '  tx-two (model) Transmitter for two probes',
      '  plc-ai (model) Current input',
    ]);
  });

  it('of a visit names the readings by their points', () => {
    const { analysis } = openAt('first.dewvisit.yaml', `|${VISIT}`, FENNMOOR);
    expect(lines(outlineOf(analysis))).toContain('  K2-MT-101 (part) dew-point');
  });

  it('names what is there while a line is being typed', () => {
    const { analysis } = openAt(
      'a.dewsite.yaml',
      'points:\n  A-1:\n    space: hall\n    repo|\n  A-2:\n    space: hall\n',
    );
    expect(lines(outlineOf(analysis))).toEqual(['points (section)', '  A-1 (point) hall', '  A-2 (point) hall']);
  });

  it('ends a section where its last entry ends', () => {
    const { analysis, text } = openAt('fennmoor.dewsite.yaml', `|${SITE}`, FENNMOOR);
    const spaces = outlineOf(analysis).find(({ name }) => name === 'spaces');
    expect(text.slice(0, spaces?.range.end)).toMatch(/dew-point: 2 \.\. 18 degC\}$/);
  });
});
