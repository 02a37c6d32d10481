import { words } from './words';

/** What makes a trial hard to believe. */
export const trialWarningsWords = words({
  not: 'not {tag}',
  sideUp: 'side up',
  headPosition: 'head position',
  hipPosition: 'hip position',
  allRepeatsCame:
    'All repeats of “{level}” came first: tiredness or getting used to it may be the whole difference. Mix the order.',
  twoConditionsWere: 'The two conditions were swum on different days: the day may be the difference.',
  changedTogetherTwo: 'The {factor} changed together with this: the two can’t be told apart here.',
  fewerThanKick: 'Fewer than {advisedKickCycles} kick cycles are marked in {swims}.',
  noKicksMarked: 'No kicks are marked in {swims}.',
  repeatsAgreeBetter:
    'The repeats agree better than they can be marked: more careful marks would help more than more repeats.',
  comparesAidsNot: 'This compares aids, not technique, and ranks nothing.',
  aidsWithoutShown: '{aided} with aids and {unaided} without: shown apart, never pooled.',
  swimmersEachCompared: '{swimmers} swimmers: each is compared only with themselves.',
  conditionNotSaid: 'The condition is not said for {swims}, left out here.',
  swims: '{count, plural, one {one swim} other {{count} swims}}',
});
