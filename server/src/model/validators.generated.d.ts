// Generated from schemas/ by server/tools/generate-model.mjs. Edit the schemas, then run `npm run generate`.
export interface SchemaError {
  readonly keyword: string;
  /** JSON pointer to the value. */
  readonly instancePath: string;
  readonly schemaPath: string;
  readonly params: Readonly<Record<string, unknown>>;
  /** The key that broke a rule for keys. */
  readonly propertyName?: string;
}

/** True where the value keeps the schema; otherwise `errors` holds what the last call found. */
export interface SchemaCheck {
  (value: unknown): boolean;
  readonly errors?: readonly SchemaError[] | null;
}

export declare const siteRoot: SchemaCheck;
export declare const siteSpace: SchemaCheck;
export declare const sitePoint: SchemaCheck;
export declare const kitRoot: SchemaCheck;
export declare const kitHumidityProbe: SchemaCheck;
export declare const kitTemperatureProbe: SchemaCheck;
export declare const kitTransmitter: SchemaCheck;
export declare const kitReceiver: SchemaCheck;
export declare const visitRoot: SchemaCheck;
export declare const visitStep: SchemaCheck;
