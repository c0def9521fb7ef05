/** Text to nodes, by way of the YAML library. */
import { Composer, type CST, type ParsedNode, Parser } from 'yaml';
import { collectComments } from './comments.ts';
import { isNestedTooDeeply } from './nesting.ts';
import type { Comment, Part } from './nodes.ts';
import { PartBuilder } from './part-builder.ts';

const OPTIONS = {
  version: '1.2',
  merge: true,
  prettyErrors: false,
  strict: true,
  uniqueKeys: false,
  logLevel: 'silent',
} as const;

const MAY_ACCEPT = /#[ \t]*accept/;

/** Parses one part. Never throws. */
export function parsePart(path: readonly string[], text: string): Part {
  const builder = new PartBuilder(text);
  if (isNestedTooDeeply(text)) {
    builder.report(0, text.length, 'The text is nested too deeply to be read');
    return builder.finish(path, undefined, []);
  }
  const tokens: readonly CST.Token[] = [...new Parser().parse(text)];
  const [document, second] = new Composer(OPTIONS).compose(tokens, true, text.length);
  if (second !== undefined) {
    const [start] = second.range;
    builder.report(start, start, 'A file holds one YAML document, and a second one starts here');
  }
  for (const error of document?.errors ?? []) builder.reportYaml(error);
  for (const warning of document?.warnings ?? []) if (warning.code !== 'BAD_INDENT') builder.reportYaml(warning);
  const root = builder.root(document?.contents as ParsedNode | null | undefined);
  return builder.finish(path, root, MAY_ACCEPT.test(text) ? commentsOf(tokens, text) : []);
}

function commentsOf(tokens: readonly CST.Token[], text: string): readonly Comment[] {
  const comments: Comment[] = [];
  for (const token of tokens) collectComments(token, text, comments);
  return comments;
}
