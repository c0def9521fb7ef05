/** What each generated file should hold, by its path from the project's root. */
export function generateModel(): Promise<Map<string, string>>;
/** The paths of generated files that do not hold what they should. */
export function staleFiles(): Promise<string[]>;
