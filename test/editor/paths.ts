/** Where the editor tests find and keep things. npm and Vitest run with the project's root as the current folder. */
import { join } from 'node:path';

export const projectRoot = process.cwd();
export const cacheFolder = join(projectRoot, '.cache');
export const standInFolder = join(projectRoot, 'test/editor/stand-ins');
/** A site with known faults, its kit and a visit. */
export const faultyWorkspace = join(projectRoot, 'test/editor/workspace');
