import { words } from './words';

/** Why a reading is doubtful. */
export const doubtsWords = words({
  peopleRarelySwim: 'people rarely swim at these times: check the slow motion and the marks',
  peopleRarelyKick: 'people rarely kick this big or this small: check the scale and the toe marks',
  kickMarksMay: 'kick marks may be missing: mark every kick',
  handMarksMay: 'hand marks may be missing: mark every stroke',
  oneMomentMarked: 'one moment is marked twice: delete one of the marks',
  someMarksDoNot: 'some marks don’t fit the rhythm of the others: check them',
  kickTopsBottoms: 'kick tops and bottoms may be swapped: check them',
  handMarksSome: 'the hand marks of some strokes are out of order, so those strokes are left out',
  swimmerGoesOther: 'the swimmer goes against the direction of travel: turn it round',
  metresDistanceMarks: 'the metres don’t grow from one distance mark to the next: check them',
  marksAfterLast: 'marks after the last frame are left out: delete them',
  waveReadOneHalf: 'the wave comes from one half of the body only: mark points from shoulder to toe',
  markingErrorLarge: 'marking is off by more than a tenth of it: mark more body lines, or film from nearer',
  frames: '{frames, plural, one {frame {named}{value}} other {frames {named}{value}}}',
  slowerThanLife: '{slowdown, plural, one {true speed} other {{short}× slower than life}}',
  kickFrequencyReads: 'Kick frequency reads {short} Hz; a person kicks {low} to {high} times a second.',
  filmedSlowMotion:
    '{slowdown, plural, one {{odd}Was this filmed in true speed? At {slowdown2} it reads {short} Hz.} other {{odd}Was this filmed in slow motion? At {slowdown2} it reads {short} Hz.}}',
  checkSlowMotion: '{odd}Check the slow motion, and whether kicks are missing.',
  checkSlowMotionWhether: '{odd}Check the slow motion, and whether kicks are marked twice.',
  theseTimesCant: 'These times can’t be right. {kickDoubt}',
  theseTimesDoubtful: 'These times are doubtful: {doubt}.',
  someReadingsDoubtful: 'Some readings are doubtful: {all}.',
});
