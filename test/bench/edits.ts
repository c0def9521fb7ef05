/** The edits that are timed. */
import type { OpenDocument, Server } from './server-under-test.ts';

export interface Place {
  readonly line: number;
  readonly character: number;
}

/** Waits for the next diagnostics of a document. */
export type Diagnose = () => Promise<unknown>;

export function pull(server: Server, uri: string): Diagnose {
  return () => server.connection.sendRequest('textDocument/diagnostic', { textDocument: { uri } });
}

/** For servers that publish by themselves: call before the edit, await after it. */
export function published(server: Server, uri: string): Diagnose {
  const waiting: (() => void)[] = [];
  server.connection.onNotification('textDocument/publishDiagnostics', (params: { uri: string }) => {
    if (params.uri === uri) for (const resolve of waiting.splice(0)) resolve();
  });
  return () => new Promise<void>((resolve) => waiting.push(resolve));
}

/** The digit of the rise in the middle of the file. */
export function middleRise(text: string): Place {
  const lines = text.split('\n');
  const line = lines.findIndex((content, index) => index > lines.length / 2 && content.includes('rise: '));
  return { line, character: (lines[line] ?? '').indexOf('rise: ') + 'rise: '.length };
}

/** Changes the rise back and forth; each time until its diagnostics are there. @returns milliseconds */
export async function timeEdits(document: OpenDocument, diagnose: Diagnose, count: number): Promise<readonly number[]> {
  const { line, character } = middleRise(document.text);
  const times: number[] = [];
  for (let index = 0; index < count; index++) {
    const from = performance.now();
    const edited = document.edit(line, character, character + 1, String(7 + (index % 3)));
    await Promise.all([edited, diagnose()]);
    times.push(performance.now() - from);
  }
  return times;
}

/** A person types a quoted title, a flow map, a list and a block scalar into the middle of the file, key by key. */
export async function timeTyping(document: OpenDocument, diagnose: Diagnose): Promise<readonly number[]> {
  const { line } = middleRise(document.text);
  const times: number[] = [];
  const type = async (at: number, start: number, end: number, text: string): Promise<void> => {
    const from = performance.now();
    await document.edit(at, start, end, text);
    await diagnose();
    times.push(performance.now() - from);
  };
  const column = (at: number): number => (document.text.split('\n')[at] ?? '').length;
  const typed = [
    '      reason: "kept dry, \'wash-down\'"',
    '      mounting: {insertion: 200 mm, path: direct}',
    '      x: [1, {a: "b"}]',
    '      note: |',
    '        text: more',
  ];
  for (const content of typed) {
    await type(line, column(line), column(line), '\n');
    for (const letter of content) await type(line + 1, column(line + 1), column(line + 1), letter);
    for (let at = column(line + 1); at > 0; at--) await type(line + 1, at - 1, at, '');
    await type(line, column(line), column(line), '');
  }
  return times;
}
