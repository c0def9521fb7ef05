import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runIn, temporaryFolder } from '../samples/built-program.ts';
import { readXml } from './read-xml.ts';

/** A name, and in the file another, with every character that one of the formats gives a meaning to. */
const FILE = `50%, <hall> & "pit": it's.dewsite.yaml`;
const SITE = String.raw`dewright: 1
site: {id: hall}
spaces:
  pit: {air: {temperature: 20 .. 30 degC, humidity: 40 .. 60 %RH}}
points:
  H-1:
    space: "<pit> & \"co\": 50%,\r\n::error::it's\e[31m"
    humidity-probe: {model: hp}
`;

describe('what a file says and how it is named cannot break out of a format', () => {
  /** GitHub Docs, 'Workflow commands': data escape % CR LF, properties also : and comma (from memory). */
  it('workflow commands: each stays one command, and unescaped says the name and the message', () => {
    const { output, messages } = checkAs('github');
    const lines = output.trim().split('\n').slice(0, -1); // the last line is the summary
    const commands = lines.map((line) => /^::(?:error|warning|notice) file=([^:,]*),[^:]*::(.*)$/.exec(line));
    expect(commands.map((command) => unescaped(command?.[1] ?? ''))).toEqual(messages.map(() => FILE));
    expect(commands.map((command) => unescaped(command?.[2] ?? ''))).toEqual(messages);
  });

  it('JUnit: well formed, and every case carries the name', () => {
    const { output, messages } = checkAs('junit');
    const [suite] = readXml(output).children;
    expect(suite?.attributes.name).toBe(FILE);
    expect(suite?.children.map(({ attributes }) => attributes.classname)).toEqual(messages.map(() => FILE));
  });

  it('text: no control character reaches the terminal', () => {
    expect(checkAs('text').output.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });
});

function checkAs(format: string): { readonly output: string; readonly messages: readonly string[] } {
  const folder = temporaryFolder();
  writeFileSync(join(folder, FILE), SITE);
  const run = (name: string): string => runIn(folder, 'check', '--format', name, '--fail-on', 'never').output;
  const [file] = JSON.parse(run('json')).files;
  const messages = file.findings.map(({ subject, message }: Record<string, string>) => `${subject}: ${message}`);
  expect(file.path).toBe(FILE);
  expect(messages.join()).toContain("50%,\r\n::error::it's");
  return { output: run(format), messages };
}

function unescaped(text: string): string {
  return text.replace(/%([\dA-F]{2})/g, (_, code) => String.fromCharCode(Number.parseInt(code, 16)));
}
