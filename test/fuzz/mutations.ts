/** Ways in which a text comes to harm: typing, pasting, merging, broken disks, ill will. */
import type { Random } from './random.ts';

type Mutation = (text: string, random: Random, other: string) => string;

/** Pieces that parsers, units, dates and numbers stumble over. */
const PIECES = [
  '"',
  "'",
  '{',
  '}',
  '[',
  ']',
  '|\n',
  '>-\n',
  '&a ',
  '*a',
  '<<: *a',
  '? ',
  '- ',
  ': ',
  '#',
  '---\n',
  '...\n',
  '%YAML 1.1\n',
  '!!binary ',
  '\t',
  '\r',
  '\r\n',
  '\n',
  '\u0000',
  '\ufeff',
  '\ud800',
  '\u2028',
  '°',
  '𝟜',
  '.nan',
  '-.inf',
  '1e400',
  '-1e-400',
  '0',
  '-0',
  '-1',
  '999999999999999999999',
  '0x1F',
  'null',
  '~',
  'true',
  ' .. ',
  '0 .. 0',
  '1e9 degC',
  '-273.15 degC',
  '-300 degC',
  '0 K',
  '0 Pa',
  '100 %RH',
  '100.0001 %RH',
  '0 %RH',
  '0 m/s',
  '0 V',
  '0 ohm',
  '0 mm',
  '1e-300 mm2',
  '0 months',
  '9999-12-31',
  '0000-00-00',
  '2026-02-30',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '](javascript:x)',
  '<img src=x>',
  '../'.repeat(40),
];

const QUANTITY_TEXT = /-?\d+(?:\.\d+)?/g;

const MUTATIONS: readonly Mutation[] = [
  function cutOff(text, random) {
    return text.slice(0, random.below(text.length + 1));
  },
  function lose(text, random) {
    const start = random.below(text.length + 1);
    return text.slice(0, start) + text.slice(start + random.below(60));
  },
  function repeat(text, random) {
    const start = random.below(text.length + 1);
    const piece = text.slice(start, start + random.below(200));
    return text.slice(0, start) + piece + text.slice(start);
  },
  function spliceWithOther(text, random, other) {
    return text.slice(0, random.below(text.length + 1)) + other.slice(random.below(other.length + 1));
  },
  function insertPiece(text, random) {
    const at = random.below(text.length + 1);
    return text.slice(0, at) + random.pick(PIECES) + text.slice(at);
  },
  function flipCharacter(text, random) {
    const at = random.below(text.length + 1);
    return text.slice(0, at) + String.fromCharCode(random.below(0x250)) + text.slice(at + 1);
  },
  function swapLines(text, random) {
    const lines = text.split('\n');
    const [one, two] = [random.below(lines.length), random.below(lines.length)];
    const [first, second] = [lines[one] ?? '', lines[two] ?? ''];
    return lines.with(one, second).with(two, first).join('\n');
  },
  function indentLine(text, random) {
    const lines = text.split('\n');
    const at = random.below(lines.length);
    return lines.with(at, ' '.repeat(random.below(9)) + (lines[at] ?? '').trimStart()).join('\n');
  },
  function changeNumber(text, random) {
    const numbers = [...text.matchAll(QUANTITY_TEXT)];
    const chosen = numbers[random.below(numbers.length)];
    if (chosen === undefined) return text;
    const value = random.pick(['0', '-1', '1e30', '1e-30', '0.0001', '99999', String(random.share() * 200)]);
    return text.slice(0, chosen.index) + value + text.slice(chosen.index + chosen[0].length);
  },
  function replaceValue(text, random) {
    const lines = text.split('\n');
    const at = random.below(lines.length);
    return lines.with(at, (lines[at] ?? '').replace(/: .*$/, `: ${random.pick(PIECES)}`)).join('\n');
  },
];

const MOST_MUTATIONS = 4;

/** @param other another text to take pieces from */
export function mutate(text: string, random: Random, other: string): string {
  let mutated = text;
  for (let left = 1 + random.below(MOST_MUTATIONS); left > 0; left--) {
    mutated = random.pick(MUTATIONS)(mutated, random, other);
  }
  return mutated;
}
