import { words } from './words';

/** The form of a swim’s card, consent and slow motion. */
export const cardFormWords = words({
  head: 'Head',
  hips: 'Hips',
  depth: 'Depth',
  trialsWhatTried: 'For trials: what was tried',
  notSaid: 'Not said',
  otherTags: 'Other tags',
  yourOwnWords: 'your own words, commas between',
  consent: 'Consent',
  iHoldWritten: 'I hold written consent to film and show this swimmer',
  given: 'Given on',
  given2: 'Given by',
  swimmerOrGuardian: 'swimmer or guardian',
  whatCovers: 'What it covers',
  minorGuardianGives: 'For a minor, a guardian gives consent, in writing.',
  noOneElseShot: 'No one else in shot.',
  deleteFilmWhen: 'Delete the film when the swimmer or guardian asks you to.',
  rulesYourPool: 'The rules of your pool and federation come first.',
  inventedSwimmerNo: 'Invented swimmer: no consent needed.',
  writtenConsent: '<span>✓ </span>Written consent of {day}',
  givenBy: ', given by {givenBy}',
  noWrittenConsent: '<span>○ </span>No written consent is recorded for {name}.',
  filmedSlowMotion: 'Was this filmed in slow motion?',
  slower: '{each, plural, one {No, true speed} other {{each}× slower}}',
  filmedAt: 'Filmed at',
  second: 'a second',
  fileDoesntSay:
    'The file doesn’t say. It plays {short} pictures a second. If it was filmed faster, your answer sets every time and speed.',
  fileSaysFilmed:
    '{taggedSlowdown, plural, one {The file keeps the {short} pictures a second it was filmed at; phones only play it slowed. } other {The file says it was filmed at {short2} pictures a second. }}',
  playsOneSecond: '{told}It plays at true speed: one second of film is one second in the water.',
  playsOneSecondFilm:
    '{told}It plays at true speed: one second of film is one second in the water. Kick frequency reads {short} Hz.',
  playsSlowerThan:
    '{told}It plays {short}× slower than life. Kick frequency reads {short2} Hz instead of {short3} Hz.',
  playsFasterThan:
    '{told}It plays {short}× faster than life. Kick frequency reads {short2} Hz instead of {short3} Hz.',
  playsSlowerThanLife:
    '{told}It plays {short}× slower than life. Two kicks a second look like {short2}. Submark reads them as {exampleHz}.',
  playsFasterThanLife: '{told}It plays {short}× faster than life. Is that right?',
  notSaid2: 'not said',
  swimmer: 'Swimmer',
  pickOrTypeNew: 'pick or type a new name',
  date: 'Date',
  filmedFrom: 'Filmed from',
  stroke: 'Stroke',
  drill: 'Drill',
  yourOwnWordsEmpty: 'in your own words; empty for the whole stroke',
  arms: 'Arms',
  sideUp: 'Side up',
  effort: 'Effort',
  aids: 'Aids',
  distanceSwumM: 'Distance swum, m',
  note: 'Note',
  newConsentBirth:
    '{swimmerName} is new. You can add consent, birth year and streamline length on the shelf.',
  swimmer2: 'The swimmer',
});
