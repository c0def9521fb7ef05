/** Keeps the workspace in step with open documents, files on disk and the kits that sites name. */
import { Workspace } from '../analysis/workspace.ts';
import { fileKindOf } from '../model/schema.ts';
import type { FileAccess } from './file-access.ts';

export class Library {
  readonly workspace = new Workspace();
  readonly #open = new Set<string>();
  readonly #missing = new Set<string>();
  /** Of each file that is being read the last reading: what was asked for before may come after it, and is old then. */
  readonly #readings = new Map<string, Promise<void>>();
  readonly #access: FileAccess;

  constructor(access: FileAccess) {
    this.#access = access;
  }

  /** An open document counts before the file on disk. One that a client sends without its text is left out. */
  opened(uri: string, text: unknown): void {
    if (typeof text !== 'string') return;
    this.#open.add(uri);
    this.workspace.set(uri, text);
  }

  async closed(uri: string): Promise<void> {
    this.#open.delete(uri);
    this.workspace.release(uri);
    await this.#readAgain(uri);
  }

  /** A file that is new on disk counts only where the search for files finds it: git may ignore it. */
  async changedOnDisk(uris: readonly string[]): Promise<void> {
    let listed: ReadonlySet<string> | undefined;
    for (const uri of uris) {
      const wasMissing = this.#missing.delete(uri);
      if (this.#open.has(uri)) continue;
      if (!wasMissing && !this.workspace.has(uri)) {
        listed ??= new Set(await this.#access.findFiles());
        if (!listed.has(uri)) continue;
      }
      await this.#readAgain(uri);
    }
  }

  /** Reads every file of the workspace that is not known yet, one after another, so that the editor comes between. */
  async readAll(): Promise<void> {
    for (const uri of await this.#access.findFiles()) {
      if (this.workspace.has(uri)) continue;
      await this.#readAgain(uri);
      this.workspace.parsed(uri);
    }
    this.workspace.markWhole();
  }

  /** Reads the kits of a site that are not known yet. */
  async readKitsOf(uri: string): Promise<void> {
    for (const kit of this.workspace.kitsOf(uri)) {
      if (this.workspace.has(kit) || this.#missing.has(kit) || fileKindOf(kit) !== 'kit') continue;
      await this.#readAgain(kit);
      if (!this.workspace.has(kit)) this.#missing.add(kit);
    }
  }

  #readAgain(uri: string): Promise<void> {
    const reading: Promise<void> = this.#access.readFile(uri).then((text) => {
      const last = this.#readings.get(uri);
      if (last !== reading) return last;
      this.#readings.delete(uri);
      if (this.#open.has(uri)) return;
      if (text === undefined) this.workspace.remove(uri);
      else this.workspace.set(uri, text);
    });
    this.#readings.set(uri, reading);
    return reading;
  }
}
