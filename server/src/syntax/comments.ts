/** Finds the comments of a part in the concrete tokens, so that a `#` inside a text is never taken for one. */
import type { CST } from 'yaml';
import type { Comment } from './nodes.ts';

/** Adds the comments below a token, in the order of the text. */
export function collectComments(token: CST.Token, text: string, into: Comment[]): void {
  if (token.type === 'comment') {
    into.push(commentAt(token.offset, token.source, text));
    return;
  }
  if ('start' in token) addComments(token.start, text, into);
  if ('props' in token) addComments(token.props, text, into);
  if ('items' in token) {
    for (const item of token.items) {
      addComments(item.start, text, into);
      if (item.key) collectComments(item.key, text, into);
      if (item.sep) addComments(item.sep, text, into);
      if (item.value) collectComments(item.value, text, into);
    }
  }
  if ('value' in token && token.value !== undefined) collectComments(token.value, text, into);
  if ('end' in token && token.end !== undefined) addComments(token.end, text, into);
}

function addComments(tokens: CST.Token | readonly CST.Token[], text: string, into: Comment[]): void {
  for (const token of Array.isArray(tokens) ? tokens : [tokens]) {
    if (token.type === 'comment') into.push(commentAt(token.offset, token.source, text));
  }
}

function commentAt(start: number, source: string, text: string): Comment {
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  return { start, end: start + source.length, text: source, alone: text.slice(lineStart, start).trim() === '' };
}
