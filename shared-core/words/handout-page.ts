import { words } from './words';

/** Words on the handout’s page. */
export const handoutPageWords = words({
  n95IntervalTrue: '± is the 95 % interval: the true value lies in it 95 times in 100.',
  seenPoints: 'Rings: seen by the machine, not reviewed.',
  hollowPointsComputer: 'Hollow points: by computer.',
  inventedSwim: 'Invented swim.',
  inventedSwimDemonstration: 'Invented swim, for demonstration.',
  think: 'Think of this',
  at: 'At {seconds}',
  target: 'On target',
  close: 'Close',
  notYet: 'Not yet',
  notMeasured: 'Not measured',
  notReviewed: 'Not reviewed',
  doubtful: 'Doubtful',
  notWhatPerson: 'Not what a person does: check the slow motion and the marks before this counts.',
  checkBeforeCounts: 'Check before this counts: {doubtsIn}.',
  noTargetYet: 'No target yet',
  swimmer: 'the swimmer',
  handout: 'Handout for {swimmerName}, {day}',
});
