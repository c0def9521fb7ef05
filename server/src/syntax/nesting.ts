/** Tells text that is nested beyond all reason, before the YAML library runs out of its stack over it. */

/** The formats nest seven deep; the library was seen to fail from a few hundred on. */
const DEEPEST_BRACKETS = 100;
/** Lines and dashes nest by the column: `a:`, ` b:`, … or `- - - -`. */
const DEEPEST_COLUMN = /^[ \t?:-]{200}/m;

/** Counts brackets wherever they stand: no text of a person has a hundred of them open. */
export function isNestedTooDeeply(text: string): boolean {
  let open = 0;
  for (let at = 0; at < text.length; at++) {
    const character = text.charAt(at);
    if (character === '[' || character === '{') open++;
    else if (open > 0 && (character === ']' || character === '}')) open--;
    if (open > DEEPEST_BRACKETS) return true;
  }
  return DEEPEST_COLUMN.test(text);
}
