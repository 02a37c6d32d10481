import { words } from './words';

/** Words on pictures and captions that are exported. */
export const exportsWords = words({
  doubtfulCaptions: 'Doubtful: {doubt}',
  captions: 'Events; frames count from 0',
  captionsOf: 'Events of {about}; frames count from 0',
  bodyLinesS: '{lines} body lines of {of} {number} of {count}, {span} s',
  inventedSwimDemonstration: 'invented swim, for demonstration',
  swimmingRight: ', swimming to the right',
  thinFollowedPoints: 'Thin: followed points.',
  hipsLaidOnePlace:
    'Hips laid on one place, heights as filmed{value}. Light at the start of the {of}, dark at its end; dashed: the way of fingertips and toes.{value2}',
  n01BodyLength: '0.1 body length',
  s: '{of} {number} of {count}, {toSeconds} s',
  seenPoints: 'Rings: seen by the machine, not reviewed',
  hollowPointsFollowed: 'hollow points: followed',
  frameS: 'frame {frame} · {realTimeOf} s',
  frameSNoBody: 'frame {frame} · {realTimeOf} s · no body line',
  frameSFrame: 'frame {frame} of {starts} · {realTimeOf} s',
  inventedSwimDemonstration2: 'Invented swim, for demonstration',
  elbow: 'elbow',
  shoulder: 'shoulder',
  hip: 'hip',
  knee: 'knee',
  ankle: 'ankle',
  trunk: 'trunk',
});
