import { fitLine } from './fit-line';
import { zeroLagLowPass } from './butterworth';

export interface ResidualAnalysis {
  /** Suggested cut-off, Hz. */
  readonly cutoffHz: number;
  /** Root mean square of what each cut-off takes away, in the unit of the samples; for the drawing. */
  readonly curve: readonly { readonly cutoffHz: number; readonly residual: number }[];
  /** Noise level read off at 0 Hz: where the straight tail of the curve meets the axis. */
  readonly noise: number;
}

/**
 * Winter's residual analysis: filter with rising cut-offs; far up, the residual falls along a straight line, which is
 * noise alone; carried back to 0 Hz it gives the noise level; the cut-off whose residual equals that level lets
 * through as much noise as it takes away signal.
 *
 * @param samples evenly spaced
 * @returns null with fewer than 16 samples, at fewer than 10 samples a second, or when no cut-off reaches the noise level
 * @see Winter, Biomechanics and Motor Control of Human Movement, "Choice of cutoff frequency: residual analysis".
 */
export function residualAnalysis(samples: readonly number[], sampleHz: number): ResidualAnalysis | null {
  if (samples.length < 16 || sampleHz < 10) return null;
  const highest = Math.min(sampleHz * 0.45, 20);
  const steps = 40;
  const curve = Array.from({ length: steps }, (_, i) => {
    const cutoffHz = 0.5 + ((highest - 0.5) * i) / (steps - 1);
    const smooth = zeroLagLowPass(samples, cutoffHz, sampleHz);
    const sum = samples.reduce((total, x, k) => total + (x - (smooth[k] ?? x)) ** 2, 0);
    return { cutoffHz, residual: Math.sqrt(sum / samples.length) };
  });
  const tail = curve.slice(Math.floor(steps * 0.6));
  const line = fitLine(
    tail.map((p) => p.cutoffHz),
    tail.map((p) => p.residual),
  );
  if (!line) return null;
  const noise = Math.max(0, line.intercept);
  const crossing = curve.findIndex((p) => p.residual <= noise);
  if (crossing < 0) return null;
  const after = curve[crossing];
  const before = curve[crossing - 1];
  if (!after) return null;
  if (!before || before.residual === after.residual) return { cutoffHz: after.cutoffHz, curve, noise };
  const share = (before.residual - noise) / (before.residual - after.residual);
  return { cutoffHz: before.cutoffHz + share * (after.cutoffHz - before.cutoffHz), curve, noise };
}
