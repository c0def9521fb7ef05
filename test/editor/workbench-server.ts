/** Serves a workbench on a free port of this machine, with the extension installed as a user would install it. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Workbench } from './setup-workbench.ts';

export interface WorkbenchServer {
  /** Where this run keeps its files; goes with the server. */
  readonly dataFolder: string;
  /** The page of the workbench with a folder open, and what else its query shall say. */
  pageOf(folder: string, query?: Readonly<Record<string, string>>): string;
  /** The address of a file of this machine, as the workbench names it. */
  addressOf(file: string): string;
  log(): string;
  stop(): Promise<void>;
}

export interface ServerOptions {
  readonly vsix?: string;
  /** True has the editor distrust the folder, and so run only extensions that declare that they can bear it. */
  readonly restricted?: boolean;
  /** True has the extension run as it would in an editor that is a web page alone: in a web worker of the browser. */
  readonly inBrowser?: boolean;
}

const START_TIMEOUT = 60_000;
const STOP_TIMEOUT = 4_000;

/** Nothing that moves, asks the network or opens by itself. */
const QUIET_SETTINGS = {
  'chat.disableAIFeatures': true,
  'editor.cursorBlinking': 'solid',
  'editor.hover.delay': 100,
  'editor.minimap.enabled': false,
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'files.autoSave': 'off',
  'git.enabled': false,
  'security.workspace.trust.startupPrompt': 'never',
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'workbench.enableExperiments': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
};

const IN_BROWSER = { 'remote.extensionKind': { 'dewright.dewright': ['web'] } };

export async function startWorkbenchServer(
  workbench: Workbench,
  options: ServerOptions = {},
): Promise<WorkbenchServer> {
  const data = mkdtempSync(join(tmpdir(), 'dewright-workbench-'));
  mkdirSync(join(data, 'user/User'), { recursive: true });
  writeFileSync(
    join(data, 'user/User/settings.json'),
    JSON.stringify({ ...QUIET_SETTINGS, ...(options.inBrowser ? IN_BROWSER : {}) }),
  );

  const env = environment(data);
  const common = [
    workbench.serverMain,
    '--accept-server-license-terms',
    '--server-data-dir',
    data,
    '--telemetry-level',
    'off',
    '--enable-smoke-test-driver', // newer releases run a suite inside the extension host only where they are told so
  ];
  if (options.vsix !== undefined) {
    execFileSync(workbench.node, [...common, '--install-extension', options.vsix], { stdio: 'ignore', env });
  }
  const address = ['--host', '127.0.0.1', '--port', '0', '--without-connection-token'];
  const folders = ['--user-data-dir', join(data, 'user')];
  const trust = options.restricted ? [] : ['--disable-workspace-trust'];
  const child = spawn(workbench.node, [...common, ...address, ...folders, ...trust], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env,
    detached: true, // a process group of its own, so that the extension host and the language server end with it
  });
  let log = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (log += text));

  const port = await listeningPort(child, () => log);
  const authority = `127.0.0.1:${port}`;
  return {
    dataFolder: data,
    pageOf: (folder, query = {}) => `http://${authority}/?${new URLSearchParams({ folder, ...query })}`,
    addressOf: (file) => `vscode-remote://${authority}${file}`,
    log: () => log,
    async stop() {
      await endProcessGroup(child);
      rmSync(data, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/**
 * Sockets go to the run's own folder, and no gallery of extensions is asked for anything. What an editor around this run
 * has set must not reach the one under test.
 */
function environment(data: string): NodeJS.ProcessEnv {
  const kept = Object.entries(process.env).filter(([name]) => !/^(VSCODE_|ELECTRON_|NODE_OPTIONS$)/.test(name));
  return { ...Object.fromEntries(kept), TMPDIR: data, XDG_RUNTIME_DIR: data, EXTENSIONS_GALLERY: '{}' };
}

function listeningPort(child: ChildProcess, log: () => string): Promise<number> {
  return new Promise((resolve, reject) => {
    const giveUp = (): void => reject(new Error(`The workbench server did not start:\n${log()}`));
    const timer = setTimeout(giveUp, START_TIMEOUT);
    child.once('exit', giveUp);
    child.stdout?.on('data', () => {
      const port = /listening on (\d+)/.exec(log())?.[1];
      if (port === undefined) return;
      clearTimeout(timer);
      child.off('exit', giveUp);
      resolve(Number(port));
    });
  });
}

async function endProcessGroup(child: ChildProcess): Promise<void> {
  if (child.pid === undefined || child.exitCode !== null) return;
  const group = -child.pid;
  const ended = new Promise((resolve) => child.once('exit', resolve));
  const timer = setTimeout(() => process.kill(group, 'SIGKILL'), STOP_TIMEOUT);
  process.kill(group, 'SIGTERM');
  await ended;
  clearTimeout(timer);
}
