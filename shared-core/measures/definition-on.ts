import type { SwimCard } from '../swim-file/swim-schema';
import type { ReadingDefinition } from './reading';
import { withoutPlace } from './without-place';

/**
 * On the back, up in the picture is toward the belly: readings that say up and down are told so there. Kick tops and
 * bottoms keep their names, which are of the picture.
 */
const onBack: Readonly<Record<string, Pick<ReadingDefinition, 'label' | 'brief'>>> = {
  'down-kick-time': { label: 'Kick toward the back, time', brief: 'kick top to kick bottom' },
  'up-kick-time': { label: 'Kick toward the belly, time', brief: 'kick bottom to kick top' },
  'down-up-ratio': {
    label: 'Kick toward the back to kick toward the belly, time',
    brief: 'below 1: toward the back is quicker',
  },
  'foot-speed-down': {
    label: 'Peak foot speed toward the back',
    brief: 'fastest speed of the toes, down in the picture',
  },
  'foot-speed-up': {
    label: 'Peak foot speed toward the belly',
    brief: 'fastest speed of the toes, up in the picture',
  },
  'foot-speed-ratio': {
    label: 'Foot speed, toward the back over toward the belly',
    brief: 'peak toward the back / peak toward the belly',
  },
  'foot-speed-over-swim': {
    label: 'Kick toward the back over swimming speed',
    brief: 'peak foot speed toward the back / speed',
  },
  'head-offset': {
    label: 'Head against the arms',
    brief: 'ear toward the belly (+) or the back (−) of wrist–shoulder',
  },
  'hip-height': {
    label: 'Hip height',
    brief: 'hip toward the belly (+) or the back (−) of shoulder–ankle',
  },
  'feet-direction-top': {
    label: 'Feet against straight up, toward the belly',
    brief: '0° = toes up, + = trailing',
  },
  'feet-direction-bottom': {
    label: 'Feet against straight down, toward the back',
    brief: '0° = toes down, + = trailing',
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
