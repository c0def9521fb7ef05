/** An editor gone mad: requests in any order, with parameters that fit, half fit or do not fit at all. */
import { startSession } from '../lsp/session.ts';
import { mutate } from './mutations.ts';
import { LONGEST, processorTime } from './probe.ts';
import { Random } from './random.ts';
import { SEED_FILES } from './seed-files.ts';

/**
 * What the server answers, and one that it does not know. Left out are the findings of all files at once, which take as
 * long as the files are many.
 */
export const REQUESTS = [
  'textDocument/hover',
  'textDocument/completion',
  'textDocument/definition',
  'textDocument/references',
  'textDocument/documentHighlight',
  'textDocument/prepareRename',
  'textDocument/rename',
  'textDocument/documentLink',
  'textDocument/documentSymbol',
  'textDocument/foldingRange',
  'textDocument/selectionRange',
  'textDocument/semanticTokens/full',
  'textDocument/semanticTokens/range',
  'textDocument/inlayHint',
  'inlayHint/resolve',
  'textDocument/codeLens',
  'textDocument/codeAction',
  'textDocument/diagnostic',
  'workspace/symbol',
  'workspace/executeCommand',
  'workspace/willRenameFiles',
  'dewright/explain',
  'dewright/explainNames',
  'dewright/siteSkeleton',
  'dewright/countPoints',
  'dewright/pack',
  'dewright/view',
  'dewright/viewReading',
  'dewright/viewWrite',
  'nobody/knowsThis',
] as const;

export const NOTIFICATIONS = [
  'textDocument/didOpen',
  'textDocument/didChange',
  'textDocument/didClose',
  'textDocument/didSave',
  'workspace/didChangeWatchedFiles',
  'workspace/didChangeConfiguration',
  'dewright/recordingChanged',
  'dewright/recordingProgress',
  '$/cancelRequest',
  'nobody/knowsThis',
] as const;

const STRANGE_VALUES: readonly unknown[] = [
  null,
  -1,
  1e9,
  1.5,
  '',
  'x',
  [],
  {},
  true,
  '\ud800',
  '../../../../etc/passwd',
];
const STRANGE_URIS = [
  '',
  'x',
  'file:///',
  'file://nowhere/%zz.dewsite.yaml',
  'untitled:Untitled-1',
  'file:///a.dewkit.yaml',
];

/** One message that a client could send of a document. */
function randomParams(uri: string, lines: number, random: Random): Record<string, unknown> {
  const position = () => ({ line: random.below(lines + 2), character: random.below(90) });
  const range = { start: position(), end: position() };
  const params: Record<string, unknown> = {
    textDocument: { uri: random.chance(0.05) ? random.pick(STRANGE_URIS) : uri, version: random.below(1000) },
    position: position(),
    range,
    positions: [position(), position()],
    context: { diagnostics: [], includeDeclaration: true, triggerKind: 1 },
    newName: random.pick(['K9-MT-1', 'a b', '', 'kiln-9', '{', '\u0000']),
    query: random.pick(['', 'K', 'kiln', '.*', '(']),
    files: [{ oldUri: uri, newUri: `${uri}.moved.dewkit.yaml` }],
    name: random.pick(['sensor-may-condense', 'dew-point', 'heater', '__proto__', '']),
    command: random.pick(['dewright.showPlace', 'rm']),
    arguments: [uri, range],
    uri,
    label: 'x',
    kind: random.pick(['chart', 'point', 'overview', 'what-if', 'comparison', 'nothing']),
    inputs: { [random.pick(['point', 'phase', 'quantity', 'rise', 'x'])]: random.pick(['', '0', '60 degC', '{']) },
    spot: [random.below(900) - 100, random.below(900) - 100],
    format: random.pick(['html', 'md', 'x']),
    data: random.pick(STRANGE_VALUES),
    changes: [{ uri, type: 1 + random.below(3) }],
    settings: random.pick(STRANGE_VALUES),
    contentChanges: [{ range, text: random.pick(['"', '{', 'x', '\n', '']) }],
    id: random.below(1000),
  };
  if (random.chance(0.1)) params[random.pick(Object.keys(params))] = random.pick(STRANGE_VALUES);
  return params;
}

/** How many documents are open at once. */
const DOCUMENTS = 12;

/**
 * Sends messages of all kinds about a dozen documents to a server of its own, and asks in the end whether somebody is
 * still at home.
 * @returns what was wrong
 */
export async function sendTraffic(messages: number, seed: number): Promise<readonly string[]> {
  const random = new Random(seed);
  const files = Array.from({ length: DOCUMENTS }, (_, index) => {
    const { kind, text } = random.pick(SEED_FILES);
    return { uri: `file:///fennmoor/file-${index}.dew${kind}.yaml`, text };
  });
  const { editor, open, change, end } = await startSession({
    files: Object.fromEntries(files.map(({ uri, text }) => [uri, text])),
  });
  const failures: string[] = [];
  for (const { uri, text } of files) await open(uri, text);
  for (let sent = 0; sent < messages; sent++) {
    const { uri, text } = random.pick(files);
    const params = randomParams(uri, text.split('\n').length, random);
    const dice = random.share();
    if (dice < 0.1) await editor.sendNotification(random.pick(NOTIFICATIONS), params);
    else if (dice < 0.2) await change(uri, mutate(text, random, random.pick(files).text));
    else {
      const request = random.pick(REQUESTS);
      const start = processorTime();
      const answer = await editor.sendRequest(request, params).catch((error: unknown) => String(error));
      const took = processorTime() - start;
      if (took > LONGEST) failures.push(`${request}: ${Math.round(took)} ms`);
      if (/\bNaN\b|\bInfinity\b/.test(JSON.stringify(answer) ?? '')) failures.push(`${request}: a number that is none`);
    }
  }
  const { uri, text } = random.pick(files);
  await open(uri, text);
  const symbols = await editor.sendRequest('textDocument/documentSymbol', { textDocument: { uri } });
  if (!Array.isArray(symbols) || symbols.length === 0) failures.push('the server no longer answers sensibly');
  await end();
  return failures;
}
