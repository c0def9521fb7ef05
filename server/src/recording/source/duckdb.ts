/** Finds DuckDB, which reads the logs. It is native code of its own package and never part of this program. */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type * as DuckDB from '@duckdb/node-api';
import { fail, type Outcome, succeed } from '../../base/outcome.ts';

export type DuckDBLibrary = typeof DuckDB;

const DUCKDB_PACKAGE = '@duckdb/node-api';

/** @param folders in whose `node_modules`, or in those above them, it is looked for, the first first */
export function loadDuckDB(folders: readonly string[]): Outcome<DuckDBLibrary, string> {
  for (const folder of folders) {
    try {
      return succeed(createRequire(join(folder, 'package.json'))(DUCKDB_PACKAGE) as DuckDBLibrary);
    } catch {
      // It may be in the next one; a package that is there and does not load helps as little as none.
    }
  }
  return fail(
    `Recordings are read with DuckDB, which is not installed: run “npm install ${DUCKDB_PACKAGE}” in ${folders[0] ?? 'the folder of this program'}.`,
  );
}
