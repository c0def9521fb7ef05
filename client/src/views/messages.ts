/** What a view's page and the extension tell each other. */

/** The values of the controls of a view, by their names. */
export type Inputs = Readonly<Record<string, string>>;

/** What a page keeps of itself while it is hidden and when the window is loaded anew. */
export interface PageState {
  readonly uri: string;
  readonly inputs: Inputs;
}

export type FromPage =
  | { readonly type: 'ready'; readonly inputs: Inputs }
  | { readonly type: 'inputs'; readonly inputs: Inputs }
  /** A click or Enter on something that stands in a file, `start` characters from its beginning. */
  | { readonly type: 'go-to'; readonly file: string; readonly start: number }
  /** The pointer is at a spot of a drawing. */
  | { readonly type: 'read'; readonly spot: readonly [x: number, y: number] }
  | { readonly type: 'copy'; readonly svg: string }
  /** What the controls are set to shall be written to the file. */
  | { readonly type: 'write' };

export type ToPage =
  | { readonly type: 'show'; readonly uri: string; readonly body: string }
  | { readonly type: 'reading'; readonly text: string };
