import { words } from './words';

/** Seeing the swimmer without marks. */
export const seeWords = words({
  queueLeft:
    'Looking for the swimmer: {waiting, plural, one {{waiting} swim left} other {{waiting} swims left}}',
  queue: 'Swims to see',
  queueNow: 'The swim being seen',
  queueStop: 'Stop',
  queueSeveral: 'There are several swimmers. Open the swim and say which one',
  queueNobody: 'Submark found no swimmer in it',
  queueLost: 'Frame {frame} can’t be decoded',
  thereNoPictures: 'There are no pictures to see the swimmer on.',
  filmStillOpening: 'The film is still opening. Try again when you see its picture.',
  submarkCouldNot: 'Submark could not open the clip a second time to look for the swimmer.',
  cancelledNothingChanged: 'Cancelled. Nothing was changed.',
  frameCantDecoded: 'Frame {frame} can’t be decoded, so Submark stopped. Nothing was changed.',
  submarkStoppedLooking: 'Submark stopped looking ({reason}). Nothing was changed. Try again.',
  submarkSawNo: 'Submark saw no swimmer. Nothing was changed.',
  submarkSawSwimmer: 'Submark saw the swimmer on all {looked} pictures.',
  submarkSawSwimmerPictures:
    'Submark saw the swimmer on {frames} of {looked} pictures. On the others the swimmer was lost or out of the picture.',
  setDirectionTravel: 'It set the direction of travel to {way}, as the head is on that side.',
  seeSwimmerEvery: 'See the swimmer on every picture',
  cancelSeeing: 'Cancel seeing',
  seeSwimmer: 'See the swimmer',
  seeing2: 'Seeing',
  lookingSwimmer: 'Looking for the swimmer: {share} %',
  picturesSecond: ', {perSecond} pictures a second',
  graphicsCard: ', on the graphics card',
  cancel: 'Cancel',
  submarkLooksSwimmer:
    'Submark looks for the swimmer on every picture, lays the nine points without a click, and suggests the kicks.',
  seenPicturesNot:
    'Seen on {pictures} pictures, not reviewed. Check the kicks below and accept the right ones. Readings use only what you accept or mark.',
  seeAgain: 'See again',
  s: '{value} <kbd>{key}</kbd>',
  forgetSeenPoints: 'Forget seen points',
  thereSwimmersFrame: 'There are {squares} swimmers on frame {frame}. Which one do you want?',
  swimmer: 'Swimmer {i}',
  seeSwimmer2: 'see the swimmer',
  forgetSeenPoints2: 'forget the seen points',
  seeingCancelled: 'Seeing was cancelled',
});
