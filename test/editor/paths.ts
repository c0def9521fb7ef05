/** Where the editor tests find and keep things. npm and Vitest run with the project's root as the current folder. */
import { join } from 'node:path';

export const PROJECT_ROOT = process.cwd();
export const CACHE_FOLDER = join(PROJECT_ROOT, '.cache');
export const STAND_IN_FOLDER = join(PROJECT_ROOT, 'test/editor/stand-ins');
/** A site with known faults, its kit and a visit. */
export const FAULTY_WORKSPACE = join(PROJECT_ROOT, 'test/editor/workspace');
