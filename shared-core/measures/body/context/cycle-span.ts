export interface CycleSpan {
  readonly fromFrame: number;
  readonly toFrame: number;
  readonly start: number;
  readonly end: number;
}
