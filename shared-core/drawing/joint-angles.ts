import type { LandmarkName } from '../marks/landmark';
import { postureMeasures } from '../measures/body/posture/posture-measures';
import { poolTransform, toPool } from '../scene/pool-transform';
import type { Posture, Swim } from '../swim-file/swim-schema';
import { exportsWords } from '../words/exports';

export interface AngleLabel {
  readonly at: LandmarkName;
  readonly words: string;
}

/** Posture readings that are written beside their joint: the same measures, so stage and panel say the same. */
const shown: readonly { readonly measure: string; readonly at: LandmarkName; readonly word: string }[] = [
  { measure: 'elbow-angle', at: 'elbow', word: exportsWords('elbow') },
  { measure: 'shoulder-angle', at: 'shoulder', word: exportsWords('shoulder') },
  { measure: 'hip-angle', at: 'hip', word: exportsWords('hip') },
  { measure: 'knee-angle', at: 'knee', word: exportsWords('knee') },
  { measure: 'ankle-angle', at: 'ankle', word: exportsWords('ankle') },
  { measure: 'trunk-pitch', at: 'shoulder', word: exportsWords('trunk') },
];

const whole = (degrees: number): string => {
  const rounded = Math.round(degrees);
  return `${rounded < 0 ? '−' : ''}${Math.abs(rounded)}°`;
};

/**
 * Words for the angles of one posture. None in a view that can't show them, and none before the direction of travel
 * is set: which side of a joint is bent, and whether the trunk rises, hang on it.
 */
export function angleLabels(
  posture: Posture,
  { scene, card }: Pick<Swim, 'scene' | 'card'>,
): readonly AngleLabel[] {
  if (card.view !== 'side' || scene.travel === null) return [];
  const transform = poolTransform(scene, null);
  const points = Object.fromEntries(
    Object.entries(posture.points).map(([name, point]) => [name, toPool(transform, point)]),
  );
  return shown.flatMap(({ measure, at, word }) => {
    const found = postureMeasures.find((each) => each.id === measure);
    const degrees = found?.read(points, { belly: card.sideUp === 'back' ? -1 : 1, sd: 0 }) ?? null;
    return degrees === null || !Number.isFinite(degrees) ? [] : [{ at, words: `${word} ${whole(degrees)}` }];
  });
}
