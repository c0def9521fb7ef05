import { expect, it } from 'vitest';
import { importsOf, sourcesIn } from './source-imports.ts';

/** The first circle that is met on the way along the edges, as the row of its files. */
function circleIn(edges: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const done = new Set<string>();
  const way: string[] = [];
  const visit = (file: string): readonly string[] | undefined => {
    if (done.has(file)) return undefined;
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
    way.push(file);
    for (const next of edges.get(file) ?? []) {
      const circle = visit(next);
      if (circle !== undefined) return circle;
    }
    way.pop();
    done.add(file);
    return undefined;
  };
  for (const file of edges.keys()) {
    const circle = visit(file);
    if (circle !== undefined) return circle;
  }
  return undefined;
}

it('finds a circle', () => {
  const edges = { a: ['b'], b: ['c', 'd'], c: [], d: ['b'] };
  expect(circleIn(new Map(Object.entries(edges)))).toEqual(['b', 'd', 'b']);
});

it.each(['server/src', 'client/src'])('no file of %s reaches itself along its imports, types included', (folder) => {
  const edges = sourcesIn(folder).map((file) => [file, importsOf(file).map(({ from }) => from)] as const);
  expect(edges.length).toBeGreaterThan(20);
  expect(circleIn(new Map(edges))).toBeUndefined();
});
