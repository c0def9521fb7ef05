/** Semantic tokens in the numbers of the protocol. The kinds are the standard ones, which every theme colours. */
import { type SemanticTokens, SemanticTokensBuilder, type SemanticTokensLegend } from 'vscode-languageserver';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { SemanticToken } from '../../features/reading/semantic-tokens.ts';

export const TOKEN_LEGEND: SemanticTokensLegend = {
  tokenTypes: ['number', 'keyword', 'enumMember', 'variable'],
  tokenModifiers: ['declaration'],
};

const NUMBERS: Readonly<Record<SemanticToken['kind'], readonly [type: number, modifiers: number]>> = {
  value: [0, 0],
  unit: [1, 0],
  quantity: [2, 0],
  name: [3, 0],
  'given-name': [3, 1],
};

export function tokenData({ lines, text }: ParsedFile, tokens: readonly SemanticToken[]): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  for (const { kind, range } of tokens) {
    if (text.slice(range.start, range.end).includes('\n')) continue;
    const { line, character } = lines.positionAt(range.start);
    builder.push(line, character, range.end - range.start, ...NUMBERS[kind]);
  }
  return builder.build();
}
