import type { Contradiction, MissingReason, NeededReading, ReadingNote } from './reading';
import { framesWords } from './doubt-words';
import { eventWords, landmarkWords } from '../marks/mark-words';
import type { View } from '../swim-file/swim-schema';
import type { EventKind } from '../marks/event-kind';
import { missingMarksWords } from '../words/missing-marks';

const count = (have: number, need: number, thing: string, things = `${thing}s`): string =>
  have > 0
    ? missingMarksWords('needsHas', { need, thing: need === 1 ? thing : things, have })
    : missingMarksWords('needs', { need, thing: need === 1 ? thing : things });

const markOf = (kind: EventKind): string => {
  const words = eventWords[kind].toLowerCase();
  return words.endsWith(' mark') ? words : missingMarksWords('mark', { words });
};

/** Readings that others are made from, in the middle of a sentence. */
const readingWords: Readonly<Record<NeededReading, string>> = {
  'kick-frequency': missingMarksWords('kickFrequencyTwo'),
  'kick-amplitude-toe': missingMarksWords('kickAmplitudeToes'),
  'body-wave-speed': missingMarksWords('bodyWaveSpeed'),
  'stroke-rate': missingMarksWords('strokeRateTwo'),
};

const sceneNeeds = {
  travel: missingMarksWords('needsDirectionTravel'),
  level: missingMarksWords('needsLevelLine'),
  surface: missingMarksWords('needsSurfaceLine'),
  scale: missingMarksWords('needsKnownLength'),
} as const;

const viewWords: Readonly<Record<View, string>> = {
  side: missingMarksWords('fromSide'),
  front: missingMarksWords('fromFront'),
  rear: missingMarksWords('fromBehind'),
  below: missingMarksWords('fromBelow'),
  above: missingMarksWords('fromAbove'),
  deck: missingMarksWords('fromDeck'),
};

const degenerateWords = {
  'equal-times': missingMarksWords('marksAllAtSame'),
  'zero-speed': missingMarksWords('swimmerDoesNot'),
  'other-way': missingMarksWords('swimmerGoesOther'),
  collinear: missingMarksWords('pointsAllLie'),
  'zero-length': missingMarksWords('twoPointsLie'),
  'speed-above-wave': missingMarksWords('swimmerFasterThan'),
} as const;

const contradictionWords: Readonly<Record<Contradiction, string>> = {
  'tops-below-bottoms': missingMarksWords('toesLowerAtKick'),
  'hands-out-of-order': missingMarksWords('handMarksOut'),
  'kick-spacing': missingMarksWords('kickMarksSpaced'),
  'stroke-spacing': missingMarksWords('handMarksSpaced'),
  'kicks-and-strokes': missingMarksWords('kicksStrokesDo'),
  'kicks-and-toes': missingMarksWords('toesGoUpDown'),
};

/** Why a reading can't be computed, as the coach reads it: what to place, or why it can't be had at all. */
export function reasonWords(reason: MissingReason): string {
  switch (reason.code) {
    case 'needs-events':
      return count(reason.have, reason.need, markOf(reason.kind));
    case 'needs-event-beside':
      return missingMarksWords('needsMarkOf', {
        markOf: markOf(reason.kind),
        side: reason.side,
        event: eventWords[reason.of].toLowerCase(),
      });
    case 'needs-landmark':
      return count(
        reason.have,
        reason.need,
        missingMarksWords('bodyLine', { landmark: landmarkWords[reason.landmark].toLowerCase() }),
        missingMarksWords('bodyLines', { landmark: landmarkWords[reason.landmark].toLowerCase() }),
      );
    case 'needs-landmark-at':
      return missingMarksWords('needsFramesEach', {
        landmark: landmarkWords[reason.landmark].toLowerCase(),
        markOf: markOf(reason.kind),
      });
    case 'needs-scene':
      return sceneNeeds[reason.item];
    case 'needs-body-length':
      return missingMarksWords('needsBodyLength');
    case 'needs-still-thing':
      return missingMarksWords('cameraMovedMark');
    case 'camera-turned':
      return missingMarksWords('cameraTurnedOr');
    case 'seen-not-proved':
      return missingMarksWords('seenNotProved');
    case 'view-cannot-show':
      return missingMarksWords('filmCantShow', { view: viewWords[reason.view] });
    case 'lies-on-side':
      return missingMarksWords('swimmerSideBeats');
    case 'needs-full-cycles':
      return count(reason.have, reason.need, missingMarksWords('wholeCycle'));
    case 'not-for-this-drill':
      return missingMarksWords('notDrillWould');
    case 'needs-denser-trace':
      return missingMarksWords('needsMoreFrames', { landmark: landmarkWords[reason.landmark].toLowerCase() });
    case 'needs-reading':
      return missingMarksWords('needsReading', { reading: readingWords[reason.reading] });
    case 'outside-picture':
      return missingMarksWords('markedOutsidePicture', {
        frames: reason.frames,
        landmark: landmarkWords[reason.landmark].toLowerCase(),
      });
    case 'marks-contradict': {
      const where = framesWords(reason.frames);
      return where
        ? missingMarksWords('lookAt', { contradiction: contradictionWords[reason.what], where })
        : contradictionWords[reason.what];
    }
    case 'degenerate':
      return degenerateWords[reason.what];
  }
}

const notes: Readonly<Record<ReadingNote, string>> = {
  'few-cycles': missingMarksWords('fewCycles'),
  'few-pictures': missingMarksWords('fewPicturesKick'),
  'marking-error-assumed': missingMarksWords('markingErrorAssumed'),
  'marking-error-part-assumed': missingMarksWords('markingErrorPartly'),
  'kick-pairing-uneven': missingMarksWords('someStrokesHave'),
  'slowdown-assumed': missingMarksWords('slowMotionAssumed'),
  'implausible-for-a-human': missingMarksWords('implausibleCheckMarks'),
  'approximate-for-children': missingMarksWords('approximateChildren'),
  'short-ends': missingMarksWords('traceEndsShort'),
  'hip-not-centre-of-mass': missingMarksWords('speedHipNotWhole'),
  'level-assumed': missingMarksWords('levelAssumed'),
  'beyond-15-m': missingMarksWords('beyond15M'),
  'few-pairs': missingMarksWords('tooFewPairsTrust'),
  'sparse-trace': missingMarksWords('sparseBodyLines'),
  'points-outside-picture': missingMarksWords('pointsOutsidePicture'),
  'not-reviewed': missingMarksWords('notReviewed'),
  'scale-off-plane': missingMarksWords('knownLengthNot'),
  'scale-across-lane': missingMarksWords('knownLengthRuns'),
  'off-plane-corrected': missingMarksWords('broughtSwimmersPlane'),
  'size-changes': missingMarksWords('swimmerNearsOr'),
  'camera-carried': missingMarksWords('camerasMovementTaken'),
  'camera-loose': missingMarksWords('cameraMovedHeights'),
  'camera-turned': missingMarksWords('cameraTurnedOrZoomed'),
  'camera-not-looked-at': missingMarksWords('cameraTakenHave'),
  'straights-unfit': missingMarksWords('straightLinesFit'),
  'plane-unfit': missingMarksWords('rectangleFitsNo'),
};

export const noteWords = (note: ReadingNote): string => notes[note];
