import { poolMarks } from '#core/scene/pool-marks';
import { benchWords } from '#core/words/bench';

/** A length the coach may find in the picture, with where its metres come from. */
export interface LengthPreset {
  readonly id: string;
  readonly words: string;
  readonly metres: number;
  /** How far the mark may be off as common: two standard deviations, metres. */
  readonly giveOrTake: number;
  readonly source: string;
  readonly caution: string | null;
}

/** Off-plane error of a lane rope 1.25 m nearer than the swimmer at 5 m: 5 / 3.75 − 1. */
const rope = benchWords('laneRopeNotSwimmers');

const across = benchWords('liesAcrossSwim');

/** The pool's own marks, in the core's order. */
export const lengthPresets: readonly LengthPreset[] = poolMarks.map(
  ({ id, label, metres, metresSd, source, plane }) => ({
    id,
    words: `${label}: ${metres} m`,
    metres,
    giveOrTake: 2 * metresSd,
    source,
    caution: plane === 'lane-rope' ? rope : plane === 'across' ? across : null,
  }),
);
