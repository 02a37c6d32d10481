import type { ReadingDefinition } from './reading';

/** Other words of the trade for what a label says; common practice, no source. */
const alsoCalled: readonly (readonly [part: string, words: string])[] = [
  ['stroke-rate', 'tempo cadence turnover spm'],
  ['kick-tempo', 'period'],
  ['kick-frequency', 'hz rate cadence tempo'],
  ['kick-rate', 'tempo cadence'],
  ['stroke-length', 'distance per stroke dps'],
  ['distance-per-kick', 'dpk metres a kick'],
  ['stroke-count', 'number of strokes'],
  ['amplitude', 'size height width of the kick'],
  ['undulation', 'wave dolphin amplitude'],
  ['body-wave', 'undulation dolphin'],
  ['head-offset', 'head position ear chin'],
  ['hip-height', 'hips high body position'],
  ['depth-hip', 'depth under water deep'],
  ['trunk-pitch', 'body angle flat back'],
  ['straightness', 'streamline'],
  ['frontal-thickness', 'streamline drag'],
  ['feet-direction', 'ankles toes'],
  ['underwater', 'dolphin kick off the wall breakout'],
  ['speed', 'velocity pace m/s'],
  ['froude', 'efficiency'],
  ['gap-', 'timing coordination'],
  ['phase-', 'arms timing'],
  ['breathing', 'breath'],
  ['kick1', 'first kick timing'],
  ['kick2', 'second kick timing'],
];

const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '');

const wordsOf = (text: string): readonly string[] => plain(text).split(/[^\p{Letter}\p{Number}/%°]+/u);

/**
 * Readings by what a coach types: every word typed begins a word of the label, brief, unit, group or another name of
 * the trade. Those whose label begins with what was typed come first, else the catalogue's order; all for an empty query.
 *
 * @param unitOf the unit a reading is shown in, "" where it is not known
 */
export function findReadings(
  query: string,
  definitions: readonly ReadingDefinition[],
  unitOf: (id: string) => string,
): readonly ReadingDefinition[] {
  const asked = wordsOf(query).filter((word) => word !== '');
  const found = definitions.filter((definition) => {
    const { id, label, brief, group } = definition;
    const others = alsoCalled.filter(([part]) => id.includes(part)).map(([, words]) => words);
    const words = [label, brief, group, unitOf(id), ...others].flatMap(wordsOf);
    return asked.every((typed) => words.some((word) => word.startsWith(typed)));
  });
  const begins = ({ label }: ReadingDefinition): boolean => plain(label).startsWith(plain(query.trim()));
  return [...found.filter(begins), ...found.filter((each) => !begins(each))];
}
