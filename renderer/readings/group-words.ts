import type { ReadingGroup } from '#core/measures/reading';
import { readingsWords } from '#core/words/readings';

export const groupWords: Readonly<Record<ReadingGroup, string>> = {
  timing: readingsWords('timing'),
  kick: readingsWords('kick'),
  'body-wave': readingsWords('bodyWave'),
  posture: readingsWords('posture'),
  speed: readingsWords('speed2'),
  stroke: 'Stroke',
  course: readingsWords('course'),
};
