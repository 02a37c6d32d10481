import { words } from './words';

/** The squad at a glance. */
export const squadWords = words({
  readings: 'Readings you see first, and their last clear change',
  metres: 'Metres logged',
  reading: 'Reading the swims…',
  noReading: 'No reading yet',
  oneDay: 'one day only',
  change: '{by} since {since}',
  noChange: 'no clear change since {since}',
  doubtful: ', doubtful',
  effort: ', other effort',
  aided: '{metres} m with aids',
  unaided: '{metres} m without',
  matched: '✓ matched',
});
