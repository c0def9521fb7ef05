/** What the handlers of requests share. */
import type { Connection } from 'vscode-languageserver';
import type { Analysis } from '../analysis/analysis.ts';
import type { ParsedFile } from '../analysis/parsed-file.ts';
import type { Workspace } from '../analysis/workspace.ts';
import type { Client } from './client.ts';

export interface Served {
  readonly connection: Connection;
  readonly client: Client;
  readonly workspace: Workspace;
  /** The analysis of a file with its kits, as it is now. */
  analysisOf(uri: string): Promise<Analysis | undefined>;
  find(file: string): ParsedFile | undefined;
  /** Tells the log of the editor of an error of the program itself; what an editor refuses is its own affair. */
  tell(error: unknown): void;
}
