/** What the language client is told about the files it serves. */
import { type ExtensionContext, workspace } from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';

export const LANGUAGES: readonly string[] = ['dewright-site', 'dewright-kit', 'dewright-visit'];

/** Every file that the product reads, told apart by its name. */
export const FILE_PATTERN = '**/*.{dewsite,dewkit,dewvisit}.yaml';

/** The language server, in the folder of the extension. */
export const SERVER_PROGRAM = 'server/dist/hosted.js';

export function clientOptions(context: ExtensionContext): LanguageClientOptions {
  const watcher = workspace.createFileSystemWatcher(FILE_PATTERN);
  context.subscriptions.push(watcher);
  return {
    documentSelector: servedSchemes().flatMap((scheme) => LANGUAGES.map((language) => ({ scheme, language }))),
    synchronize: { fileEvents: watcher },
    initializationOptions: { files: 'client' },
  };
}

/**
 * The schemes of files on disk, of new files, and of whatever the workspace folders live in. Other schemes show
 * copies, such as the old side of a comparison, and a copy would repeat every tag of its original.
 */
function servedSchemes(): readonly string[] {
  const folders = workspace.workspaceFolders ?? [];
  return [...new Set(['file', 'untitled', ...folders.map((folder) => folder.uri.scheme)])];
}
