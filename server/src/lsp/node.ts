/** The server on Node: over IPC or standard input and output, as the call says. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { filePath } from '../analysis/file-location.ts';
import { accessOnDisk } from './disk-access.ts';
import { readerFromDisk } from './disk-recordings.ts';
import { startServer } from './server.ts';

startServer(
  createConnection(ProposedFeatures.all),
  (folders) => accessOnDisk(folders.map(filePath)),
  (folders) => readerFromDisk(folders.map(filePath)),
);
