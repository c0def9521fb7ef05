/** What completion offers, as plain data, and how its text is spelt for editors with and without snippets. */

/** Text, a place to type in with what stands there at first, or a choice of words. */
export type SnippetPiece = string | { readonly hole: string } | { readonly choices: readonly string[] };

export type CompletionKind =
  | 'key'
  | 'word'
  | 'unit'
  | 'value'
  | 'quantity'
  | 'reference'
  | 'model'
  | 'file'
  | 'snippet';

export interface CompletionItem {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One short line beside the label. */
  readonly detail?: string;
  /** Markdown. */
  readonly documentation?: string;
  readonly insert: readonly SnippetPiece[];
  /** True where the next thing typed is one to choose as well. */
  readonly asksNext?: true;
}

/** An item whose text is its label. */
export function plainItem(
  label: string,
  kind: CompletionKind,
  more: Pick<CompletionItem, 'detail' | 'documentation'> = {},
): CompletionItem {
  return { label, kind, insert: [label], ...more };
}

/** `detail`, where there is one. */
export function withDetail(detail: string | undefined): Pick<CompletionItem, 'detail'> {
  return detail === undefined || detail === '' ? {} : { detail };
}

/** In the snippet syntax of the Language Server Protocol: `mode: ${1|off,continuous|}`. */
export function snippetText(pieces: readonly SnippetPiece[]): string {
  let stop = 0;
  return pieces
    .map((piece) => {
      if (typeof piece === 'string') return piece.replace(/[\\$}]/g, '\\$&');
      stop++;
      if ('hole' in piece)
        return piece.hole === '' ? `$${stop}` : `\${${stop}:${piece.hole.replace(/[\\$}]/g, '\\$&')}}`;
      return `\${${stop}|${piece.choices.map((choice) => choice.replace(/[\\$},|]/g, '\\$&')).join(',')}|}`;
    })
    .join('');
}

/** Without places to type in: each holds what stands there at first. */
export function plainText(pieces: readonly SnippetPiece[]): string {
  return pieces
    .map((piece) => (typeof piece === 'string' ? piece : 'hole' in piece ? piece.hole : (piece.choices[0] ?? '')))
    .join('');
}
