import { words } from './words';

/** A camera that moved. */
export const cameraWords = words({
  lookingAtCamera: 'Looking at the camera was stopped',
  cameraSeemsHave:
    'The camera seems to have moved: without a thing that stands still, marked on two frames, speed and distance are not read.',
  cameraSeemsHaveTurned: 'The camera seems to have turned or zoomed: speed and distance are not read.',
  stoodStill: 'It stood still',
  lookingWhetherCamera: 'Looking whether the camera moved: {share} %',
  stop: 'Stop',
  tooLittleCan:
    'Too little can be seen behind the swimmer to tell whether the camera moved. Speed, distance and heights are read as if it had stood.',
  nobodyHasLooked:
    'Nobody has looked whether the camera moved: speed, distance and heights are read as if it had stood.',
  lookAgain: 'Look again',
  look: 'Look',
  clipCouldNot: 'The clip could not be opened a second time to look at the camera.',
  frameCantDecoded: 'Frame {frame} can’t be decoded: the camera was not looked at.',
  lookingAtCameraStopped: 'Looking at the camera stopped by itself ({problem}). Nothing is lost; try again.',
});
