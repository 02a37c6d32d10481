import { type BodyContext, bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { seeded } from '../../../../sample-clips/model/seeded';
import { allTruths, habitualPostures } from './body-truths';
import { drawModel } from './draw-model';
import { drawVariedModel } from './draw-varied-model';
import { markedSwim, type ModelSwim, type Noise } from './model-swim';

export interface DrawnBody {
  /** What was swum, and how it was marked. */
  readonly model: ModelSwim;
  readonly noise: Noise;
  readonly input: BodyInput;
  readonly context: BodyContext;
  readonly truth: ReadonlyMap<string, number>;
}

/**
 * A kick with so strong a third harmonic that even the fingertips show it: in most swims it drowns in the noise of marking,
 * and its phase is not told.
 */
export function drawThirdBody(seed: number): DrawnBody {
  const { model, noise } = drawModel(seed, 'dense');
  const random = seeded(seed ^ 0x6c8e9cf5);
  const swum: ModelSwim = {
    ...model,
    base: 'kick',
    period: 0.38 + 0.32 * random(),
    shoulder: 0,
    // more, with the second harmonic, would give a kick more than one top
    pixelsPerMetre: Math.max(200, model.pixelsPerMetre),
    third: 0.08 + 0.07 * random(),
  };
  // marked with care, on a picture large enough
  const marking = { ...noise, landmarkSd: Math.min(noise.landmarkSd, 0.6) };
  const input = markedSwim(swum, marking);
  const context = bodyContext(input);
  const truths = [...allTruths(swum, context)].filter(([id]) => id.startsWith('harmonic-'));
  return { model: swum, noise: marking, input, context, truth: new Map(truths) };
}

/** The swim of a seed with all that landmark readings want, marked with error, and the truth of each reading. */
export const drawBody = (seed: number): DrawnBody => drawBodyWith(seed, {});

/** The same, with `change` of its model set and not drawn. */
export function drawBodyWith(seed: number, change: Partial<ModelSwim>): DrawnBody {
  const { model, noise } = drawModel(seed);
  const swum = { ...model, hands: true, linesAtEvents: true, underwater: true, ...change };
  const input = markedSwim(swum, noise);
  const context = bodyContext(input);
  return { model: swum, noise, input, context, truth: allTruths(swum, context) };
}

/** Readings that have an interval of their own for what the swimmer does from cycle to cycle, beside postures at events. */
const ofTheSwimmer =
  /^(undulation-[a-z-]+|kick-amplitude-toe(-relative)?|foot-speed-(up|down)|phase-lag-[a-z-]+|wave-speed-[a-z-]+|body-wave-(speed|length)|froude)$/;

/** A swim whose strokes stray from the swimmer's habit, and what the habit is in truth. */
export function drawVariedBody(seed: number): DrawnBody {
  const { habit, varied, noise } = drawVariedModel(seed);
  const input = markedSwim(varied, noise);
  const context = bodyContext(input);
  const truths = [...allTruths(habit, context)].filter(([id]) => ofTheSwimmer.test(id));
  const truth = new Map([...truths, ...habitualPostures(habit, context)]);
  return { model: varied, noise, input, context, truth };
}
