import { words } from './words';

/** What readings are called when the swimmer lies on the back. */
export const readingsOnBackWords = words({
  kickTowardBack: 'Kick toward the back, time',
  kickTopKickBottom: 'kick top to kick bottom',
  kickTowardBelly: 'Kick toward the belly, time',
  kickBottomKick: 'kick bottom to kick top',
  kickTowardBackKick: 'Kick toward the back to kick toward the belly, time',
  below1Toward: 'below 1: toward the back is quicker',
  peakFootSpeed: 'Peak foot speed toward the back',
  fastestSpeedToes: 'fastest speed of the toes, down in the picture',
  peakFootSpeedToward: 'Peak foot speed toward the belly',
  fastestSpeedToesUp: 'fastest speed of the toes, up in the picture',
  footSpeedToward: 'Foot speed, toward the back over toward the belly',
  peakTowardBack: 'peak toward the back / peak toward the belly',
  kickTowardBackOver: 'Kick toward the back over swimming speed',
  peakFootSpeedTowardBack: 'peak foot speed toward the back / speed',
  headAgainstArms: 'Head against the arms',
  earTowardBelly: 'ear toward the belly (+) or the back (−) of wrist–shoulder',
  hipHeight: 'Hip height',
  hipTowardBelly: 'hip toward the belly (+) or the back (−) of shoulder–ankle',
  feetAgainstStraight: 'Feet against straight up, toward the belly',
  n0ToesUpTrailing: '0° = toes up, + = trailing',
  feetAgainstStraightDown: 'Feet against straight down, toward the back',
  n0ToesDownTrailing: '0° = toes down, + = trailing',
});
