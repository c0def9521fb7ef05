/** A text as a YAML file spells it, so that it is read back as the same text. */

const PLAIN = /^[A-Za-z0-9_.][A-Za-z0-9_./+-]*$/;
const NO_TEXT = /^(?:null|true|false|\.inf|\.nan|\.\.\.)$/i;

/** @param text one line */
export function yamlWord(text: string): string {
  const plain = PLAIN.test(text) && !NO_TEXT.test(text) && Number.isNaN(Number(text));
  return plain ? text : JSON.stringify(text);
}
