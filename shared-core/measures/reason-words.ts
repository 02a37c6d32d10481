import type { Contradiction, MissingReason, NeededReading, ReadingNote } from './reading';
import { framesWords } from './doubt-words';
import { eventWords, landmarkWords } from '../marks/mark-words';
import type { View } from '../swim-file/swim-schema';
import type { EventKind } from '../marks/event-kind';

const count = (have: number, need: number, thing: string, things = `${thing}s`): string =>
  `Needs ${need} ${need === 1 ? thing : things}${have > 0 ? `, has ${have}` : ''}`;

const markOf = (kind: EventKind): string => {
  const words = eventWords[kind].toLowerCase();
  return words.endsWith(' mark') ? words : `${words} mark`;
};

/** Readings that others are made from, in the middle of a sentence. */
const readingWords: Readonly<Record<NeededReading, string>> = {
  'kick-frequency': 'the kick frequency: two kick tops or two kick bottoms',
  'kick-amplitude-toe': 'the kick amplitude: the toes at kick tops and bottoms',
  'body-wave-speed': 'the body-wave speed: shoulder to toes on more frames of each cycle',
  'stroke-rate': 'the stroke rate: two hand entries',
};

const sceneNeeds = {
  travel: 'Needs the direction of travel',
  level: 'Needs a level line',
  surface: 'Needs the surface line',
  scale: 'Needs a known length',
} as const;

const viewWords: Readonly<Record<View, string>> = {
  side: 'from the side',
  front: 'from the front',
  rear: 'from behind',
  below: 'from below',
  above: 'from above',
  deck: 'from the deck',
};

const degenerateWords = {
  'equal-times': 'The marks are all at the same time',
  'zero-speed': 'The swimmer does not move between the marks',
  'other-way': 'The swimmer goes the other way: turn the direction of travel round',
  collinear: 'The points all lie on one line',
  'zero-length': 'Two points lie on one another',
  'speed-above-wave': 'The swimmer is faster than the body wave: check the marks and the scale',
} as const;

const contradictionWords: Readonly<Record<Contradiction, string>> = {
  'tops-below-bottoms': 'The toes are lower at kick tops than at kick bottoms: swap those marks',
  'hands-out-of-order': 'Hand marks are out of order within the stroke',
  'kick-spacing': 'Kick marks are spaced too unevenly to count kicks: mark every kick once',
  'stroke-spacing': 'Hand marks are spaced too unevenly to count strokes: mark every stroke once',
  'kicks-and-strokes': 'Kicks and strokes do not fit together: mark every kick and every hand entry',
  'kicks-and-toes': 'The toes go up and down in another rhythm than the kick marks: mark every kick',
};

/** Why a reading can't be computed, as the coach reads it: what to place, or why it can't be had at all. */
export function reasonWords(reason: MissingReason): string {
  switch (reason.code) {
    case 'needs-events':
      return count(reason.have, reason.need, markOf(reason.kind));
    case 'needs-event-beside':
      return `Needs a ${markOf(reason.kind)} ${reason.side} the ${eventWords[reason.of].toLowerCase()}`;
    case 'needs-landmark':
      return count(
        reason.have,
        reason.need,
        `body line with the ${landmarkWords[reason.landmark].toLowerCase()}`,
        `body lines with the ${landmarkWords[reason.landmark].toLowerCase()}`,
      );
    case 'needs-landmark-at':
      return `Needs the ${landmarkWords[reason.landmark].toLowerCase()} on the frames of each ${markOf(reason.kind)}: the body lines lie elsewhere`;
    case 'needs-scene':
      return sceneNeeds[reason.item];
    case 'needs-body-length':
      return 'Needs the body length: a whole body line in streamline, or the swimmer’s own';
    case 'needs-still-thing':
      return 'The camera moved: mark one thing that stands still beside the swimmer on two frames far apart';
    case 'camera-turned':
      return 'The camera turned or zoomed: what goes along can’t be read. Distance marks can';
    case 'view-cannot-show':
      return `Film ${viewWords[reason.view]} can't show this`;
    case 'lies-on-side':
      return 'A swimmer on the side beats across the water, which the side view does not show';
    case 'needs-full-cycles':
      return count(reason.have, reason.need, 'whole cycle');
    case 'not-for-this-drill':
      return 'Not for this drill: it would not compare with the full stroke';
    case 'needs-denser-trace':
      return `Needs the ${landmarkWords[reason.landmark].toLowerCase()} on more frames of each cycle`;
    case 'needs-reading':
      return `Needs ${readingWords[reason.reading]}`;
    case 'outside-picture':
      return `The ${landmarkWords[reason.landmark].toLowerCase()} is marked outside the picture on ${reason.frames} body ${reason.frames === 1 ? 'line' : 'lines'}: move it in, or leave it out`;
    case 'marks-contradict': {
      const where = framesWords(reason.frames);
      return where ? `${contradictionWords[reason.what]}. Look at ${where}` : contradictionWords[reason.what];
    }
    case 'degenerate':
      return degenerateWords[reason.what];
  }
}

const notes: Readonly<Record<ReadingNote, string>> = {
  'few-cycles': 'few cycles',
  'few-pictures': 'few pictures a kick: one picture is a large step',
  'marking-error-assumed': 'marking error assumed',
  'marking-error-part-assumed': 'marking error partly assumed',
  'kick-pairing-uneven': 'some strokes have not two kicks',
  'slowdown-assumed': 'slow motion assumed',
  'implausible-for-a-human': 'implausible: check marks, scale and slow motion',
  'approximate-for-children': 'approximate for children',
  'short-ends': 'trace ends short',
  'hip-not-centre-of-mass': 'speed of the hip, not of the whole body',
  'level-assumed': 'level assumed',
  'beyond-15-m': 'beyond 15 m',
  'few-pairs': 'too few pairs to trust',
  'sparse-trace': 'sparse body lines',
  'points-outside-picture': 'points outside the picture are not read',
  'scale-off-plane': 'the known length is not in the swimmer’s plane: lengths are off',
  'scale-across-lane': 'the known length runs across the lane: a side view shows it too short',
  'off-plane-corrected': 'brought to the swimmer’s plane by the distances given',
  'size-changes': 'the swimmer nears or leaves the camera: lengths and speed are off',
  'camera-carried': 'the camera’s movement is taken out, and its error is in the interval',
  'camera-loose': 'the camera moved: heights are read as if it had only gone along',
  'camera-turned': 'the camera turned or zoomed: lengths and heights are off',
  'camera-not-looked-at': 'the camera is taken to have stood still: nobody has looked',
  'straights-unfit': 'the straight lines fit no lens and are not used',
  'plane-unfit': 'the rectangle fits no plane and is not used',
};

export const noteWords = (note: ReadingNote): string => notes[note];
