export interface Schema {
  readonly $id?: string;
  readonly $ref?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly default?: unknown;
  readonly const?: unknown;
  readonly enum?: readonly string[];
  readonly enumDescriptions?: readonly string[];
  readonly quantity?: { readonly dimension: string; readonly form: 'value' | 'range'; readonly of?: string };
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean | Schema;
  readonly items?: Schema;
  readonly oneOf?: readonly Schema[];
  readonly definitions?: Readonly<Record<string, Schema>>;
}

export const STANDARD_ANNOTATIONS: readonly string[];
export const OWN_ANNOTATIONS: readonly string[];
/** Calls `visit` with the schema and every schema inside it. */
export function walkSchemas(schema: Schema, visit: (schema: Schema) => void): void;
/** The definition that a schema refers to, or undefined. */
export function definitionName(schema: Schema): string | undefined;
