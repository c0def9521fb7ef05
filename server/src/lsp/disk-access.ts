/** File access on the disk, for editors whose client does not read files for the server. Only in the workspace folders. */
import { readFile, realpath, stat } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import { filesBelow } from '../cli/find-files.ts';
import { LARGEST_FILE } from '../syntax/parse-file.ts';
import type { FileAccess } from './file-access.ts';

/** @param folders absolute paths of the workspace folders */
export function accessOnDisk(folders: readonly string[]): FileAccess {
  return {
    findFiles: async () => folders.flatMap((folder) => filesBelow(folder).files.map(fileUri)),
    readFile: async (uri) => {
      const path = filePath(uri);
      try {
        if (!(await isInside(folders, path))) return undefined;
        const { size } = await stat(path);
        return size > LARGEST_FILE ? undefined : await readFile(path, 'utf8');
      } catch {
        return undefined;
      }
    },
  };
}

/** Links that lead out of the folders are seen through. @throws where there is no such file */
export async function isInside(folders: readonly string[], path: string): Promise<boolean> {
  const file = await realpath(path);
  const known = await Promise.all(folders.map((folder) => realpath(folder).catch(() => [])));
  return known.flat().some((folder) => file.startsWith(join(folder, sep)));
}
