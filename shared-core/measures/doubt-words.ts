import type { Doubt, DoubtCode } from './doubt';

const words: Readonly<Record<DoubtCode, string>> = {
  'times-unusual': 'people rarely swim at these times: check the slow motion and the marks',
  'amplitude-unusual': 'people rarely kick this big or this small: check the scale and the toe marks',
  'kicks-may-be-missing': 'kick marks may be missing: mark every kick',
  'strokes-may-be-missing': 'hand marks may be missing: mark every stroke',
  'marked-twice': 'one moment is marked twice: delete one of the marks',
  'marks-uneven': 'some marks do not fit the rhythm of the others: check them',
  'tops-bottoms-may-be-exchanged': 'kick tops and bottoms may be swapped: check them',
  'hands-out-of-order': 'hand marks of some strokes are out of order: those strokes are left out',
  'goes-other-way': 'the swimmer goes the other way than the direction of travel says: turn it round',
  'distances-run-backward': 'the metres of the distance marks do not grow from mark to mark: check them',
  'marks-past-end': 'marks after the last frame of the film are left out: delete them',
  'landmarks-missing-between':
    'the wave is read on one half of the body alone: mark points from shoulder to toe',
};

/** Frames named at most: the first few are enough to find the way. Our default. */
const namedFrames = 4;

/** Frames of marks as a coach reads them: "frames 12, 40"; empty of none. */
export function framesWords(frames: readonly number[]): string {
  if (frames.length === 0) return '';
  const named = frames.slice(0, namedFrames).join(', ');
  return `${frames.length === 1 ? 'frame' : 'frames'} ${named}${frames.length > namedFrames ? ' …' : ''}`;
}

/** A doubt as the coach reads it, for the middle of a list: what may be wrong, what to do, and where. */
export function doubtWords({ code, frames }: Doubt): string {
  const where = framesWords(frames);
  return where ? `${words[code]} (${where})` : words[code];
}
