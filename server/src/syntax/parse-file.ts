/** A whole file to its tree: split, then parse each part. */
import type { Part, SyntaxTree } from './nodes.ts';
import { parsePart } from './parse-part.ts';
import { splitFile } from './split.ts';

/** Beyond this a file is not a site file that anybody typed. */
export const LARGEST_FILE = 20_000_000;

/**
 * @param text the file
 * @param entryKeys the top-level keys whose entries are parts of their own
 */
export function parseFile(text: string, entryKeys: ReadonlySet<string>): SyntaxTree {
  if (text.length > LARGEST_FILE) return { text, parts: [{ part: tooLarge(), offset: 0 }] };
  const parts = splitFile(text, entryKeys).map(({ path, start, end }) => ({
    part: parsePart(path, text.slice(start, end)),
    offset: start,
  }));
  return { text, parts };
}

function tooLarge(): Part {
  const sentence = `The file is longer than ${LARGEST_FILE / 1e6} million characters and is not checked`;
  const problems = [{ start: 0, end: 0, sentence }];
  return {
    path: [],
    text: '',
    root: undefined,
    problems,
    acceptanceComments: [],
    anchors: new Map(),
    foreignAliases: [],
  };
}
