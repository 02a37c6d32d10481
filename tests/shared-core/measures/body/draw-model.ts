import { normal, seeded } from '../../../../sample-clips/model/seeded';
import type { ModelSwim, Noise } from './model-swim';

const rates = [25, 30, 50, 60, 120, 240] as const;

/**
 * A random swim: technique, camera, rate, marking error, tilt, drift and scale error, all drawn from one seed. `kind`
 * narrows the draw to 'sparse' (body lines at kick events only), 'dense', or any when left out.
 */
export function drawModel(seed: number, kind?: string): { model: ModelSwim; noise: Noise } {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const base = random() < 0.5 ? 'stroke' : 'kick';
  const framesPerSecond = rates[Math.floor(random() * rates.length)] ?? 60;
  const sparse = random() < 0.2;
  const every = Math.max(1, Math.round((framesPerSecond / 50) * between(0.6, 1.6)));
  const model: ModelSwim = {
    base,
    period: base === 'stroke' ? between(0.95, 1.5) : between(0.38, 0.7),
    cycles: Math.floor(between(2, base === 'stroke' ? 7 : 13)),
    speed: between(0.9, 2),
    surge: between(0.003, 0.02),
    toe: between(0.15, 0.3),
    shoulder: base === 'stroke' ? between(0.04, 0.1) : 0,
    sharpness: between(0, 0.12),
    third: between(0.005, 0.04),
    waveNumber: between(1.8, 3.2),
    driftUp: between(-0.1, 0.1),
    pixelsPerMetre: between(120, 300),
    framesPerSecond,
    tilt: between(-0.1, 0.1),
    travel: random() < 0.5 ? 'left' : 'right',
    every: kind === 'sparse' || (sparse && kind !== 'dense') ? 0 : every,
    uneven: random() < 0.3 ? between(0, 0.4) : 0,
    hidden: random() < 0.3 ? between(0, 0.1) : 0,
  };
  const noise: Noise = {
    normal: () => normal(random),
    landmarkSd: between(0.5, 3.5),
    eventSd: between(0.003, 0.012),
    scenePointSd: between(0.5, 3),
    offPlaneSd: 0.01,
  };
  return { model, noise };
}
