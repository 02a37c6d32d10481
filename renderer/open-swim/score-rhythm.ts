/** What the score draws of a swim's strokes; times in real seconds from the first picture. */
export interface ScoreStroke {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly breathing: boolean;
  readonly phases: readonly ScorePhase[];
  readonly gaps: readonly ScoreGap[];
}

export interface ScorePhase {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly percent: number;
}

/** Time from a hand event to its kick; positive when the leg is later. */
export interface ScoreGap {
  /** Reading this gap is one cycle of. */
  readonly reading: string;
  readonly handEventId: string;
  readonly kickEventId: string;
  readonly milliseconds: number;
  readonly percent: number;
}

export interface ScoreRhythm {
  readonly strokes: readonly ScoreStroke[];
  /** Starts of cycles that the "percent" axis counts in: strokes, or kicks where there are no strokes. */
  readonly cycleStarts: readonly number[];
}
