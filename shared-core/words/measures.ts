import { words } from './words';

/** How readings are written. */
export const measuresWords = words({
  to: '{number} to {number2}',
  notReviewed: '{valueLine}, not reviewed',
  doubtful: '{valueLine}, doubtful',
  reMarkings: '{remarkings, plural, one {{remarkings} re-marking} other {{remarkings} re-markings}}',
  measured: 'measured on {counted}',
  partlyMeasuredRest: 'partly measured on {counted}, the rest assumed',
  swimMarkingScale: 'this-swim: marking and scale; this-swimmer: spread between cycles, by Student’s t',
  lBodyLengths: 'L: body lengths, fingertip to toe in streamline; %L: percent of one; px: picture pixels',
  partVarianceEvery: 'part of the variance that every swim with the same scene shares, unit²',
  degreesFreedomThose:
    'degrees of freedom of those, where the coach’s marking error was measured; not there else',
  sampleStandardDeviation:
    'sample standard deviation of the single values behind a mean, in the reading’s unit',
  whetherAnythingSpeaks: 'whether anything speaks against the value: never show it without saying so',
  whyValueMayWrong: 'why the value may be wrong although it is computed',
  toPlain: '{plain} to {plain2}',
  atMost: 'at most {plain}',
  atLeast: 'at least {plain}',
  mayOrMayNotMeet: 'may or may not meet the target, {band}',
  meetsTarget: 'meets the target, {band}',
  missesTarget: 'misses the target, {band}',
  measured2: 'measured',
  assumed: 'assumed',
  any: 'any',
});
