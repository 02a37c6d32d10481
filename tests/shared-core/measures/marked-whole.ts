import { bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { computeReadings } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import { markedSwim, type ModelSwim, plainKick } from './body/model-swim';

export const stroking: ModelSwim = {
  ...plainKick,
  base: 'stroke',
  period: 1.1,
  cycles: 4,
  shoulder: 0.07,
  hands: true,
  underwater: true,
};

export function marked(model: ModelSwim, seed: number): BodyInput {
  const random = seeded(seed);
  const input = markedSwim(model, {
    normal: () => normal(random),
    landmarkSd: 1.5,
    eventSd: 0.004,
    scenePointSd: 1,
    offPlaneSd: 0.01,
  });
  const arms = model.base === 'stroke' ? ('stroking' as const) : ('stretched' as const);
  return { ...input, swim: { ...input.swim, card: { ...input.swim.card, arms } } };
}

export const readAll = (input: BodyInput): readonly Reading[] => computeReadings(bodyContext(input));
export const withSwim = (input: BodyInput, change: Partial<Swim>): BodyInput => ({
  ...input,
  swim: { ...input.swim, ...change },
});

export const mapPoints = (
  input: BodyInput,
  to: (p: { x: number; y: number }) => { x: number; y: number },
): BodyInput =>
  withSwim(input, {
    postures: input.swim.postures.map(
      (posture): Posture => ({
        ...posture,
        points: Object.fromEntries(
          Object.entries(posture.points).map(([name, point]) => [name, to(point)]),
        ) as Posture['points'],
      }),
    ),
  });
