import { words } from './words';

/** Words on a video. */
export const videoPageWords = words({
  frameS: 'frame {frame} of {count} · {realTimeOf} s',
  doubtful: 'Doubtful. {words}',
  inventedSwimDemonstration: 'invented swim, for demonstration',
  trueSpeed: 'true speed',
  slowMotionTrue: 'slow motion, {share} of true speed',
  slowMotionSlowed: 'slow motion, slowed {times} ×',
  trueSpeedSlow: '{slow} × true speed',
  hands: 'Hands',
  feet: 'Feet',
  head: 'Head',
  course: 'Course',
});
