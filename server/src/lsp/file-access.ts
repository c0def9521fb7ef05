/** How the server reaches files: through the client where the client offers it, else on the disk. */
import type { Connection } from 'vscode-languageserver';

export interface FileAccess {
  /** The URIs of all site, kit and visit files of the workspace. */
  findFiles(): Promise<readonly string[]>;
  /** The text of a file, or undefined where it is not there or must not be read. */
  readFile(uri: string): Promise<string | undefined>;
}

export function accessThroughClient(connection: Connection): FileAccess {
  return {
    findFiles: async () => (await connection.sendRequest<{ uris: string[] }>('dewright/findFiles', {})).uris,
    readFile: async (uri) => {
      const { text } = await connection.sendRequest<{ text: string | null }>('dewright/readFile', { uri });
      return text ?? undefined;
    },
  };
}
