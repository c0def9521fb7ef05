import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { runIn, temporaryFolder } from './built-program.ts';
import { SAMPLES_FOLDER } from './sample-files.ts';

const TUTORIAL = readFileSync(join(SAMPLES_FOLDER, 'tutorial.md'), 'utf8');

interface Block {
  readonly language: string;
  readonly heading: string;
  readonly text: string;
}

/** The fenced blocks, each with the heading it stands under. */
function blocks(): readonly Block[] {
  const found = TUTORIAL.matchAll(/^## (?<heading>[^\n]*)$|^```(?<language>\w+)\n(?<text>.*?)^```$/gms);
  let heading = '';
  return [...found].flatMap(({ groups = {} }) => {
    heading = groups.heading ?? heading;
    return groups.language === undefined ? [] : { language: groups.language, heading, text: groups.text ?? '' };
  });
}

it('the tutorial leads from an empty file to a clean point and its pack, and quotes what the program says', () => {
  const folder = temporaryFolder();
  let output = '';
  for (const { language, heading, text } of blocks()) {
    if (language === 'yaml') takeOver(folder, text);
    if (language === 'sh') for (const line of text.trimEnd().split('\n')) output = run(folder, line);
    if (language === 'text') expect(quoted(output), heading).toBe(text);
  }
  expect(output).toBe('');
  expect(run(folder, 'dewright check')).toContain('nothing to report');
  expect(readFileSync(join(folder, 'ripening.html'), 'utf8')).toContain('Ripening room 1, air between the crates');
});

/** Runs a command of the tutorial; a finding is no failure, anything else that ends otherwise than with 0 is. */
function run(folder: string, line: string): string {
  const [program = '', ...words] = line.split(' ');
  if (program === 'touch') {
    for (const name of words) writeFileSync(join(folder, name), '');
    return '';
  }
  expect(program).toBe('dewright');
  const { status, output } = runIn(folder, ...words);
  expect([0, words[0] === 'check' ? 1 : 0], line).toContain(status);
  return output;
}

/** The findings alone, or the line that sums up where there are none; the tutorial leaves places and fixes out. */
function quoted(output: string): string {
  const findings = output.split('\n').filter((line) => /^ {2}\d+:\d+ /.test(line));
  return findings.length === 0 ? output : `${findings.join('\n')}\n`;
}

/** Does what the tutorial says of a block: each of its parts replaces that of the same key, or comes last. */
function takeOver(folder: string, block: string): void {
  const [, name = '', text = ''] = /^# (\S+)\n(.*)$/s.exec(block) ?? [];
  const file = join(folder, name);
  mkdirSync(dirname(file), { recursive: true });
  const parts = new Map([...partsOf(readFileSync(file, { encoding: 'utf8', flag: 'a+' })), ...partsOf(today(text))]);
  writeFileSync(file, [...parts.values()].join(''));
}

function partsOf(text: string): readonly (readonly [key: string, text: string])[] {
  return [...text.matchAll(/^([a-z-]+):.*\n(?: .*\n)*/gm)].map(([part, key = '']) => [key, part]);
}

/** The day of the last check is always a recent one, or the tutorial would go stale with the calendar. */
function today(text: string): string {
  return text.replace(/last: [\d-]+/, `last: ${new Date().toISOString().slice(0, 10)}`);
}
