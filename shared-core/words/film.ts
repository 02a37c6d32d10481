import { words } from './words';

/** Two swims on one picture, and films. */
export const filmWords = words({
  workingCopyBeing:
    'A working copy is being made, as this window can’t decode the clip. Ready frames step at once, others come as stills.',
  workingCopyBeingMade:
    'A working copy is being made; go on with the clip meanwhile. It is taken over at the same frame.',
  workingCopy: 'Working copy',
  stop: 'Stop',
  soFarWindowCouldnt:
    '{broken, plural, one {so far this window couldn’t decode one picture} other {so far this window couldn’t decode {broken} pictures}}',
  clipDamagedWorking:
    'This clip is damaged: {damage}. A working copy patches up what it can. Submark makes it in the background, and its frames are the same.',
  stepsTakeAbout:
    'Steps take about {slowMs} ms on this clip. A working copy makes them quick; it is made in the background and its frames are the same.',
  makeWorkingCopy: 'Make a working copy',
  notNow: 'Not now',
  readyHereFrames: 'Ready here: frames {first} to {last}',
  notReadyHere: 'Not ready here yet: stills meanwhile',
  notReadyHereYet: 'Not ready here yet: the clip itself meanwhile',
  clipNotWhere: 'The clip “{originalName}” is not where it was.',
  clipNotFilmThese:
    'The clip “{originalName}” is not the film these marks were made on, so it is not shown under them.',
  notLinked: 'Not linked. {what} {todo}',
  noPicture: 'No picture',
  hereMomentAgo:
    'It was here a moment ago. Connect its disk again or put the file back, and the picture returns by itself, on the same frame.',
  marksReadingsScore: 'Marks, readings and the score are all here.',
  makeWorkingCopy2: 'Make the working copy',
  whereNow: 'Where is it now?',
  looking: 'Looking…',
  link: 'Link it',
  stepThroughFilm: 'Step through the film',
  previousMark: 'Previous mark',
  mark: 'mark',
  tenFramesBack: 'Ten frames back',
  frame: 'frame',
  oneFrameBack: 'One frame back',
  pictureDamaged: 'this picture is damaged',
  pictureItsWay: 'picture on its way…',
  oneFrame: 'One frame on',
  tenFrames: 'Ten frames on',
  nextMark: 'Next mark',
  playOrStop: 'Play or stop',
  speedPlaying: 'Speed of playing',
  playAtTrueSpeed: 'Play at {each} of true speed',
  scrubThroughFilm: 'Scrub through the film',
  of: '· {time} % of {cycle} {index}',
  frameFrame: 'frame {frame} of {starts}',
});
