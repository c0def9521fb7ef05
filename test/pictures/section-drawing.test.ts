import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MarkupElement, writeMarkup } from '../../server/src/base/markup.ts';
import { showFact } from '../../server/src/evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';
import { sectionDrawing } from '../../server/src/pictures/section/drawing.ts';
import { sectionOf } from '../../server/src/pictures/section/section.ts';
import { known } from '../evaluate/evaluated-site.ts';
import { factsById } from '../evaluate/facts-by-id.ts';
import { installedPoint, type SiteText } from '../evaluate/installed-point.ts';
import { analysisOf, SAMPLE_NAMES, sampleWorkspace } from '../samples/sample-files.ts';
import { crossedLabels, lengthOf, only, textOf, withClass } from './drawn.ts';

const KILN = '{air: {temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH, speed: 2 .. 4 m/s}, wall: WALL}';
const WALL = '{thickness: 1.5 mm, material: stainless-steel, insulation: 80 mm, insulation-material: mineral-wool}';

interface Mounted {
  readonly attitude?: string;
  readonly insulation?: number;
  readonly insulationBeside?: number;
  readonly position?: string;
  readonly insertions?: readonly [number, number];
  readonly wall?: string;
}

function mountedPoint({
  attitude = 'horizontal',
  insulation = 25,
  insulationBeside = insulation,
  position = 'below',
  insertions = [200, 180],
  wall = WALL,
}: Mounted): PointEvaluation {
  const text: SiteText = {
    space: KILN.replace('WALL', wall),
    point: `humidity-probe: {model: heated, heater: {mode: continuous, rise: 8 K}, mounting: {insertion: ${insertions[0]} mm, attitude: ${attitude}, insulation: ${insulation} mm}},
      air-temperature-probe: {model: slim, mounting: {insertion: ${insertions[1]} mm, insulation: ${insulationBeside} mm, spacing: 120 mm, position: ${position}}}`,
  };
  return installedPoint(text);
}

function drawn(point: PointEvaluation): MarkupElement {
  const section = sectionOf(point);
  if (!section.ok) throw new Error(section.problem);
  return sectionDrawing(section.value, 'Section', () => undefined);
}

/** px per mm, as the drawing's own scale bar says it. */
function scaleOf(drawing: MarkupElement): number {
  const bar = only(withClass(drawing, 'scale'));
  const words = textOf(drawing.children[drawing.children.indexOf(bar) + 1] ?? '');
  return lengthOf(bar) / Number(words.replace(' mm', ''));
}

/** mm, measured off the dimension lines of one kind. */
function measured(drawing: MarkupElement, name: string): readonly number[] {
  const scale = scaleOf(drawing);
  return withClass(drawing, `of-${name}`).map((group) => {
    const [line] = withClass(group, 'measure');
    return line === undefined ? Number.NaN : lengthOf(line) / scale;
  });
}

const ATTITUDES = ['horizontal', 'head-down', 'head-up'] as const;
const POSITIONS = ['below', 'above', 'beside', 'upstream', 'downstream'] as const;

describe('a section is drawn to scale', () => {
  it.each(ATTITUDES)('%s: insertions, spacing, wall and insulation measure what the file says', (attitude) => {
    for (const position of POSITIONS) {
      const drawing = drawn(mountedPoint({ attitude, position }));
      // Coordinates keep a hundredth of a px, at about 1.5 px for a mm.
      const expectAbout = (found: readonly number[], millimetres: readonly number[]): void => {
        expect(found.length).toBe(millimetres.length);
        for (const [index, value] of millimetres.entries())
          expect(Math.abs((found[index] ?? 0) - value)).toBeLessThan(0.05);
      };
      expectAbout(measured(drawing, 'insertion'), [200, 180]);
      expectAbout(measured(drawing, 'spacing'), [120]);
      expectAbout(measured(drawing, 'thickness'), [1.5, 80]);
      expectAbout(measured(drawing, 'insulation'), [25]);
    }
  });

  it('each dimension line bears the number of the file', () => {
    const drawing = drawn(mountedPoint({}));
    const numbers = ['insertion', 'spacing', 'thickness', 'insulation'].map((name) =>
      withClass(drawing, `of-${name}`)
        .map(textOf)
        .map((text) => text.trim()),
    );
    expect(numbers).toEqual([
      ['200 mm', '180 mm'],
      ['120 mm'],
      ['1.5 mm stainless steel, austenitic', '80 mm mineral wool'],
      ['25 mm'],
    ]);
  });

  it('leaves out an air-temperature probe whose tip cannot be where the file says', () => {
    const drawing = drawn(mountedPoint({ insertions: [400, 180] }));
    expect(withClass(drawing, 'of-insertion').length).toBe(1);
    expect(textOf(drawing)).toContain('with these insertions the tips are further apart than the spacing');
  });
});

describe('no label crosses a dimension line', () => {
  const length = fc.integer({ min: 60, max: 1200 });
  const thin = fc.integer({ min: 0, max: 60 });

  it.each(ATTITUDES)('%s, for random walls, fittings and probes on any side', (attitude) => {
    fc.assert(
      fc.property(
        fc.constantFrom(...POSITIONS),
        fc.tuple(length, fc.integer({ min: 0, max: 60 })),
        fc.tuple(thin, thin),
        fc.integer({ min: 1, max: 200 }),
        (position, [insertion, shorter], [insulation, insulationBeside], ofWall) => {
          const wall = WALL.replace('80 mm', `${ofWall} mm`);
          const insertions = [insertion, Math.max(20, insertion - shorter)] as const;
          const mounted = { attitude, position, insertions, insulation, insulationBeside, wall };
          expect(crossedLabels(drawn(mountedPoint(mounted)))).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('in the sections of all sample points', () => {
    const workspace = sampleWorkspace();
    const sections = SAMPLE_NAMES.filter((name) => name.endsWith('.dewsite.yaml')).flatMap((name) => {
      const { content } = analysisOf(workspace, name);
      const points = content.kind === 'site' ? [...content.site.points.values()] : [];
      return points.filter((point) => sectionOf(point).ok);
    });
    expect(sections.length).toBeGreaterThan(5);
    for (const point of sections) expect(crossedLabels(drawn(point))).toEqual([]);
  });
});

describe('what is wet is marked where the facts say so, and nowhere else', () => {
  it('wall and fitting, for any insulation', () => {
    const insulation = fc.integer({ min: 0, max: 60 });
    const ofWall = fc.integer({ min: 1, max: 200 });
    let [wet, dry] = [0, 0];
    fc.assert(
      fc.property(insulation, ofWall, fc.constantFrom(...ATTITUDES), (collar, thickness, attitude) => {
        const wall = WALL.replace('80 mm', `${thickness} mm`);
        const point = mountedPoint({ attitude, insulation: collar, wall });
        const drawing = drawn(point);
        for (const part of ['fitting', 'wall'] as const) {
          const facts = factsById(part === 'wall' ? point.space : point);
          const isBelow = known(facts.get(`${part}-margin`)).value < 0;
          expect(withClass(drawing, `${part}-condenses`).length).toBe(isBelow ? 1 : 0);
          expect(withClass(drawing, 'wet').map(textOf).includes(`${part} condenses`)).toBe(isBelow);
          if (isBelow) wet++;
          else dry++;
        }
      }),
      { numRuns: 40 },
    );
    expect(Math.min(wet, dry)).toBeGreaterThan(0);
  });

  it('a stem is wet from a wet fitting on, and dry from a dry one on', () => {
    expect(withClass(drawn(mountedPoint({ insulation: 0 })), 'stem-condenses').length).toBe(2);
    expect(withClass(drawn(mountedPoint({ insulation: 150 })), 'stem-condenses').length).toBe(0);
  });
});

describe('temperatures along the stem', () => {
  it('start at the fact of the fitting and end at the heated head, 8 K above the air', () => {
    const point = mountedPoint({});
    const temperatures = withClass(drawn(point), 'temperature').map(textOf);
    expect(temperatures.slice(0, 3)).toEqual([
      showFact(known(factsById(point).get('fitting-inner-surface'))),
      expect.stringMatching(/^[\d.]+ °C$/),
      'head 86 °C',
    ]);
  });

  it('the worst corner, its dew point and the surroundings are named', () => {
    expect(textOf(drawn(mountedPoint({})))).toContain('78 °C, 88 %RH and 2 m/s; dew point 74.9 °C, surroundings 5 °C.');
  });
});

it('the air is drawn with an arrow where the position of the probe says its direction, and with words elsewhere', () => {
  for (const position of POSITIONS) {
    const drawing = drawn(mountedPoint({ position }));
    const isDirected = position === 'upstream' || position === 'downstream';
    expect(withClass(drawing, 'flow').length).toBe(isDirected ? 1 : 0);
    expect(textOf(drawing).includes('direction not given')).toBe(!isDirected);
  }
});

it('without a wall the probes are drawn, and the drawing says what is lacking', () => {
  const point = installedPoint({
    space: '{air: {temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH, speed: 2 .. 4 m/s}}',
    point: 'humidity-probe: {model: heated, mounting: {insertion: 200 mm}}',
  });
  expect(textOf(drawn(point))).toContain('No temperatures along the stem: the space gives no wall.');
});

it('a point without an insertion, or in a sample line, has no section, and the reason is said', () => {
  const ofProbe = (mounting: string): PointEvaluation =>
    installedPoint({
      space: KILN.replace('WALL', WALL),
      point: `humidity-probe: {model: heated, mounting: ${mounting}}`,
    });
  expect(sectionOf(ofProbe('{attitude: head-down}'))).toEqual({
    ok: false,
    problem: 'no insertion of the humidity probe is given',
  });
  expect(sectionOf(ofProbe('{path: sample-line, insertion: 20 mm}'))).toEqual({
    ok: false,
    problem: 'the probe sits in a sample line',
  });
});

it('names from the file become text and nothing else', () => {
  const point = installedPoint({
    space: KILN.replace('WALL', WALL),
    point: `humidity-probe: {model: '<b onclick="x">&', mounting: {insertion: 200 mm}}`,
  });
  const written = writeMarkup(drawn(point));
  expect(written).toContain('&lt;b onclick=&quot;x&quot;&gt;&amp;');
  expect(written).not.toContain('<b');
});
