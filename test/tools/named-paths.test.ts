import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';

const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  'SECURITY.md',
  ...['client', 'samples', 'server', join('server', 'pages')].flatMap(pagesIn),
];

function pagesIn(folder: string): readonly string[] {
  return readdirSync(folder, { encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .map((name) => join(folder, name));
}

/** Paths in backticks, from the root of the project. Words in capitals stand for names of a reader's own. */
function quotedPaths(text: string): readonly string[] {
  const paths = [...text.matchAll(/`((?:client|samples|schemas|server|test)\/[\w./-]*)`/g)].map(
    ([, path = '']) => path,
  );
  return paths.filter((path) => !/\/dist\/|[A-Z]{3}/.test(path));
}

function linksIn(page: string, text: string): readonly string[] {
  const targets = [...text.matchAll(/\]\(([^)#:]+)[^):]*\)/g)].map(([, target = '']) => target);
  return targets.map((target) => join(dirname(page), target));
}

it.each(PAGES)('%s names and links only what is there', (page) => {
  const text = readFileSync(page, 'utf8');
  const isExtensionPage = page === join('client', 'README.md'); // its links start at the root of the package
  const named = [...quotedPaths(text), ...linksIn(isExtensionPage ? 'README.md' : page, text)];
  expect(named.filter((path) => !existsSync(path))).toEqual([]);
});
