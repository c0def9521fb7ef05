import { describe, expect, it } from 'vitest';
import { pictureUri } from '../../server/src/pictures/picture-file.ts';
import { PLANE, SIZE } from '../../server/src/pictures/plots/history-plane.ts';
import { historyPlot } from '../../server/src/pictures/plots/history-plot.ts';
import { humidityHistory, pair, type VisitText, visitedPoint } from '../evaluate/visited-point.ts';
import { only, textOf, withClass } from './drawn.ts';

const FOUND = 'reference-uncertainty: 1 %RH, state: as-found';
const LEFT = 'reference-uncertainty: 1 %RH, state: as-left';

/** Half a percent a year; adjusted once. */
const VISITS: readonly VisitText[] = [
  { date: '2022-09-01', readings: [pair(0)] },
  { date: '2023-09-01', readings: [pair(0.5)] },
  { date: '2024-09-01', readings: [pair(1, FOUND), pair(0, LEFT)] },
  { date: '2025-09-01', readings: [pair(0.5)] },
];

function plotOf(visits: readonly VisitText[]) {
  const point = visitedPoint({ visits });
  return historyPlot(humidityHistory(point), point.checkPlan.due?.due);
}

describe('the plot of a history', () => {
  const plot = plotOf(VISITS);

  it('marks every reading, those as left with a square', () => {
    const dots = withClass(plot, 'dot');
    expect(dots.map(({ name }) => name)).toEqual(['circle', 'circle', 'circle', 'rect', 'circle']);
    const [first, , , , last] = dots.map(({ attributes }) => Number(attributes['cx']));
    expect(first).toBeGreaterThan(PLANE.left);
    expect(last).toBeLessThan(PLANE.right);
  });

  it('draws the tolerance to either side of no error, in the proportion of the readings', () => {
    const [above = 0, below = 0] = withClass(plot, 'limit').map(({ attributes }) => Number(attributes['y1']));
    const middle = (PLANE.top + PLANE.bottom) / 2;
    expect(above + below).toBeCloseTo(2 * middle, 9);
    const found = Number(withClass(plot, 'dot')[2]?.attributes['cy']);
    // 1 %RH of a tolerance of 3 %RH.
    expect((middle - found) / (middle - above)).toBeCloseTo(1 / 3, 6);
  });

  it('breaks the drift where the point was adjusted', () => {
    expect(withClass(plot, 'area')).toHaveLength(2);
    expect(withClass(plotOf(VISITS.slice(0, 2)), 'area')).toHaveLength(0);
  });

  it('says in words what it shows', () => {
    const words = textOf(only(plot.children.filter((child) => typeof child !== 'string' && child.name === 'desc')));
    expect(words).toContain('2024-09-01 as found 1 %RH. 2024-09-01 as left 0 %RH');
    expect(words).toMatch(/The drift is 0\.50 ± 0\.\d\d %RH in a year/);
    expect(words).toMatch(/The next check is proposed for 20\d\d-\d\d-\d\d by the variables-data method/);
    expect(plot.attributes['aria-label']).toBe('Errors of the relative humidity over the years');
  });

  it('stays inside its size', () => {
    const numbers = [...withClass(plot, 'area'), ...withClass(plot, 'curve')].flatMap(({ attributes }) =>
      [...String(attributes['d'] ?? '').matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => [Number(x), Number(y)]),
    );
    expect(numbers.length).toBeGreaterThan(0);
    for (const [x = -1, y = -1] of numbers) {
      expect(x >= PLANE.left && x <= PLANE.right && y >= PLANE.top && y <= PLANE.bottom).toBe(true);
    }
  });
});

it('a picture for a text is one image with its style, and no place of a file is in it', () => {
  const uri = pictureUri(plotOf(VISITS), SIZE);
  expect(uri).toMatch(/^data:image\/svg\+xml,[^()'"\s]+$/);
  const svg = decodeURIComponent(uri.slice('data:image/svg+xml,'.length));
  expect(svg).toMatch(
    /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" .*width="320" height="140"><style>[\s\S]*<\/svg>$/,
  );
  expect(svg).not.toContain('file:');
});
