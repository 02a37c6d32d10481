import { normal, seeded } from '../../../../sample-clips/model/seeded';
import { drawModel } from './draw-model';
import { modelLead, type ModelSwim, type Noise } from './model-swim';

/**
 * A random swimmer whose strokes differ in size: the habit, the swim of strokes that stray from it, and quiet marking on
 * film of 50 pictures a second or more, so that what is seen from stroke to stroke is the swimmer.
 */
export function drawVariedModel(seed: number): { habit: ModelSwim; varied: ModelSwim; noise: Noise } {
  const { model, noise } = drawModel(seed);
  const random = seeded(seed ^ 0x2545f491);
  const spread = 0.04 + 0.08 * random();
  const period = 0.95 + 0.55 * random();
  // kick one goes in with the hands, a little after them, so that no kick lies across the border of two strokes
  const topAfterEntry = (0.02 + 0.18 * random()) * period;
  const habit: ModelSwim = {
    ...model,
    base: 'stroke',
    period,
    late: modelLead + topAfterEntry,
    hands: true,
    linesAtEvents: true,
    shoulder: 0.04 + 0.06 * random(),
    cycles: 3 + Math.floor(6 * random()),
    framesPerSecond: Math.max(50, model.framesPerSecond),
    every: Math.max(1, model.every),
    hidden: 0,
  };
  return {
    habit,
    varied: { ...habit, sizes: Array.from({ length: habit.cycles + 1 }, () => spread * normal(random)) },
    noise: { ...noise, landmarkSd: Math.min(noise.landmarkSd, 1), eventSd: 0.003 },
  };
}
