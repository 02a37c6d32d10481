import type { SwimCard } from '../swim-file/swim-schema';
import type { ReadingDefinition } from './reading';
import { withoutPlace } from './without-place';
import { readingsOnBackWords } from '../words/readings-on-back';

/**
 * On the back, up in the picture is toward the belly: readings that say up and down are told so there. Kick tops and
 * bottoms keep their names, which are of the picture.
 */
const onBack: Readonly<Record<string, Pick<ReadingDefinition, 'label' | 'brief'>>> = {
  'down-kick-time': {
    label: readingsOnBackWords('kickTowardBack'),
    brief: readingsOnBackWords('kickTopKickBottom'),
  },
  'up-kick-time': {
    label: readingsOnBackWords('kickTowardBelly'),
    brief: readingsOnBackWords('kickBottomKick'),
  },
  'down-up-ratio': {
    label: readingsOnBackWords('kickTowardBackKick'),
    brief: readingsOnBackWords('below1Toward'),
  },
  'foot-speed-down': {
    label: readingsOnBackWords('peakFootSpeed'),
    brief: readingsOnBackWords('fastestSpeedToes'),
  },
  'foot-speed-up': {
    label: readingsOnBackWords('peakFootSpeedToward'),
    brief: readingsOnBackWords('fastestSpeedToesUp'),
  },
  'foot-speed-ratio': {
    label: readingsOnBackWords('footSpeedToward'),
    brief: readingsOnBackWords('peakTowardBack'),
  },
  'foot-speed-over-swim': {
    label: readingsOnBackWords('kickTowardBackOver'),
    brief: readingsOnBackWords('peakFootSpeedTowardBack'),
  },
  'head-offset': {
    label: readingsOnBackWords('headAgainstArms'),
    brief: readingsOnBackWords('earTowardBelly'),
  },
  'hip-height': {
    label: readingsOnBackWords('hipHeight'),
    brief: readingsOnBackWords('hipTowardBelly'),
  },
  'feet-direction-top': {
    label: readingsOnBackWords('feetAgainstStraight'),
    brief: readingsOnBackWords('n0ToesUpTrailing'),
  },
  'feet-direction-bottom': {
    label: readingsOnBackWords('feetAgainstStraightDown'),
    brief: readingsOnBackWords('n0ToesDownTrailing'),
  },
};

/**
 * A reading's definition as it is told of a swim: on the back with "toward the belly" and "toward the back" for up and
 * down; else as it is.
 */
export function definitionOn(
  definition: ReadingDefinition,
  card: Pick<SwimCard, 'sideUp'>,
): ReadingDefinition {
  if (card.sideUp !== 'back') return definition;
  const id = withoutPlace(definition.id);
  const words = onBack[id];
  if (!words) return definition;
  const place = id === definition.id ? null : / (?:at|in the) [^,]*$/.exec(definition.label);
  const ending = place?.[0] ?? '';
  return { ...definition, brief: words.brief, label: `${words.label}${ending}` };
}
