import type { Doubt, DoubtCode } from './doubt';
import { doubtsWords } from '../words/doubts';

const words: Readonly<Record<DoubtCode, string>> = {
  'times-unusual': doubtsWords('peopleRarelySwim'),
  'amplitude-unusual': doubtsWords('peopleRarelyKick'),
  'kicks-may-be-missing': doubtsWords('kickMarksMay'),
  'strokes-may-be-missing': doubtsWords('handMarksMay'),
  'marked-twice': doubtsWords('oneMomentMarked'),
  'marks-uneven': doubtsWords('someMarksDoNot'),
  'tops-bottoms-may-be-exchanged': doubtsWords('kickTopsBottoms'),
  'hands-out-of-order': doubtsWords('handMarksSome'),
  'goes-other-way': doubtsWords('swimmerGoesOther'),
  'distances-run-backward': doubtsWords('metresDistanceMarks'),
  'marks-past-end': doubtsWords('marksAfterLast'),
  'landmarks-missing-between': doubtsWords('waveReadOneHalf'),
  'marking-error-large': doubtsWords('markingErrorLarge'),
};

/** Frames named at most: the first few are enough to find the way. Our default. */
const namedFrames = 4;

/** Frames of marks as a coach reads them: "frames 12, 40"; empty of none. */
export function framesWords(frames: readonly number[]): string {
  if (frames.length === 0) return '';
  const named = frames.slice(0, namedFrames).join(', ');
  return doubtsWords('frames', {
    frames: frames.length,
    named,
    value: frames.length > namedFrames ? ' …' : '',
  });
}

/** A doubt as the coach reads it, for the middle of a list: what may be wrong, what to do, and where. */
export function doubtWords({ code, frames }: Doubt): string {
  const where = framesWords(frames);
  return where ? `${words[code]} (${where})` : words[code];
}
