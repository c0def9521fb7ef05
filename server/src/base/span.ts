/** A range of plain numbers, canonical. */
export interface Span {
  readonly low: number;
  readonly high: number;
}
