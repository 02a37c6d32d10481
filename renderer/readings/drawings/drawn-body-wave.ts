import { landmarkNames } from '#core/marks/landmark';

interface At {
  readonly x: number;
  readonly y: number;
}

/** A drawn wave along the body, growing toward the toes; `phase` in turns. */
export function bodyWave(phase: number): readonly At[] {
  return landmarkNames.map((_, i) => {
    const share = i / (landmarkNames.length - 1);
    const amplitude = 6 + 20 * share ** 1.5;
    return { x: 246 - 222 * share, y: 48 + amplitude * Math.sin(2 * Math.PI * (share * 1.1 - phase)) };
  });
}

/** Straight lines from point to point, as a path. */
export const path = (points: readonly At[]): string =>
  `M${points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}`;
