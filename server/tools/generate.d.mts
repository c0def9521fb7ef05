/** The paths of generated files that do not hold what they should. */
export function staleFiles(): Promise<string[]>;
