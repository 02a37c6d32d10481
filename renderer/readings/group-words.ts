import type { ReadingGroup } from '#core/measures/reading';

export const groupWords: Readonly<Record<ReadingGroup, string>> = {
  timing: 'Timing',
  kick: 'Kick',
  'body-wave': 'Body wave',
  posture: 'Posture',
  speed: 'Speed',
  stroke: 'Stroke',
  course: 'Course',
};
