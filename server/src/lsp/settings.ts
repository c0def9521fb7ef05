/** The settings of the editor, asked for once per file until they change. */
import { DidChangeConfigurationNotification } from 'vscode-languageserver';
import { LENS_KINDS, type LensKind } from '../features/reading/code-lenses.ts';
import { HINT_KINDS, type HintKind } from '../features/reading/inlay-hints.ts';
import type { Served } from './served.ts';

export interface Settings {
  readonly hints: ReadonlySet<HintKind>;
  readonly lenses: ReadonlySet<LensKind>;
}

export interface SettingsReader {
  /** Everything is on where the editor tells no settings. */
  of(uri: string): Promise<Settings>;
  /** A file was closed. */
  forget(uri: string): void;
  /** Asks the editor to tell of changes; once the connection stands. */
  watch(): Promise<void>;
}

/** @param changed is called whenever they may have changed */
export function readSettings({ connection, client }: Served, changed: () => void): SettingsReader {
  const known = new Map<string, Promise<Settings>>();
  connection.onDidChangeConfiguration(() => {
    known.clear();
    changed();
  });
  const ask = async (uri: string): Promise<Settings> => {
    const scope = { scopeUri: uri, section: 'dewright' };
    const told: unknown = client.tellsSettings
      ? await connection.workspace.getConfiguration(scope).catch(() => undefined)
      : undefined;
    return { hints: switchedOn(told, 'inlayHints', HINT_KINDS), lenses: switchedOn(told, 'codeLens', LENS_KINDS) };
  };
  return {
    of(uri) {
      const settings = known.get(uri) ?? ask(uri);
      known.set(uri, settings);
      return settings;
    },
    forget: (uri) => void known.delete(uri),
    async watch() {
      if (!client.registersSettings) return;
      await connection.client.register(DidChangeConfigurationNotification.type, { section: 'dewright' });
    },
  };
}

/** Everything is on that is not switched off, alone or with all of its group. */
function switchedOn<Kind extends string>(told: unknown, group: string, kinds: readonly Kind[]): ReadonlySet<Kind> {
  const isOff = (key: string): boolean => valueAt(valueAt(told, group), key) === false;
  return new Set(isOff('enabled') ? [] : kinds.filter((kind) => !isOff(kind)));
}

function valueAt(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
}
