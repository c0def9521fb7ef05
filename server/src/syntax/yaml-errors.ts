/** The YAML library's error codes in the product's own words. */
import type { YAMLParseError } from 'yaml';

const WORDS: Readonly<Partial<Record<YAMLParseError['code'], string>>> = {
  ALIAS_PROPS: 'An alias such as “*name” takes no anchor or tag of its own',
  BAD_ALIAS: 'An alias is a star and the name of an anchor, such as “*kiln-air”',
  BAD_COLLECTION_TYPE: 'The tag says one kind of collection and the text is another',
  BAD_DIRECTIVE: 'This directive is not known',
  BAD_DQ_ESCAPE: 'A backslash in double quotes starts an escape that is not known; single quotes take it as it is',
  BAD_INDENT: 'This line is not indented as its neighbours are',
  BAD_PROP_ORDER: 'Anchors and tags stand before the value they name',
  BAD_SCALAR_START: 'A value cannot start with this character; put it in quotes',
  BLOCK_AS_IMPLICIT_KEY:
    'A key and a second colon stand on one line; put the inner value in quotes or on a line of its own',
  BLOCK_IN_FLOW: 'Inside { } and [ ] a comma stands between two entries, and one is missing here',
  KEY_OVER_1024_CHARS: 'A key is longer than 1024 characters',
  MISSING_CHAR: 'A closing quote, bracket, comma or colon is missing',
  MULTILINE_IMPLICIT_KEY: 'A key goes over more than one line; a colon with a blank behind it, or a quote, is missing',
  MULTIPLE_ANCHORS: 'A value has two anchors',
  MULTIPLE_TAGS: 'A value has two tags',
  NON_STRING_KEY: 'A key is a plain word here',
  TAB_AS_INDENT: 'A tab indents this line; YAML is indented with spaces',
  TAG_RESOLVE_FAILED: 'This tag is not known; values here need no tags',
  UNEXPECTED_TOKEN: 'This does not belong here; a line break, a comma or a quote is missing or too many',
};

/** The library has one code for lines out of line and for brackets that are still open where their key ends. */
const OPEN_BRACKET =
  'A bracket opened above is still open here, or this line stands no deeper than the key it belongs to';

export function wordsOfYamlError({ code, message }: Pick<YAMLParseError, 'code' | 'message'>): string {
  if (code === 'BAD_INDENT' && message.startsWith('Flow')) return OPEN_BRACKET;
  return WORDS[code] ?? 'The YAML cannot be read here';
}
