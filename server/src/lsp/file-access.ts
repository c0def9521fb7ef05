/** How the server reaches files: through the client where the client offers it, else on the disk. */
import type { Connection } from 'vscode-languageserver';

export interface FileAccess {
  /** The URIs of all site, kit and visit files of the workspace. */
  findFiles(): Promise<readonly string[]>;
  /** The text of a file, or undefined where it is not there or must not be read. */
  readFile(uri: string): Promise<string | undefined>;
}

/** A client that does not answer, because it is closing or something failed there, has no files. */
export function accessThroughClient(connection: Connection): FileAccess {
  return {
    findFiles: async () => {
      const request = connection.sendRequest<{ uris: string[] }>('dewright/findFiles', {});
      return (await request.catch(() => undefined))?.uris ?? [];
    },
    readFile: async (uri) => {
      const request = connection.sendRequest<{ text: string | null }>('dewright/readFile', { uri });
      return (await request.catch(() => undefined))?.text ?? undefined;
    },
  };
}
