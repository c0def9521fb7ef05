import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Gives a folder settings of its own, which go before those of the user; those that it had are gone. */
export function setForFolder(folder: string, settings: Readonly<Record<string, unknown>>): void {
  mkdirSync(join(folder, '.vscode'), { recursive: true });
  writeFileSync(join(folder, '.vscode/settings.json'), JSON.stringify(settings));
}
