/** Recursive coefficients of a second-order low-pass: y[i] = a0·x[i] + a1·x[i−1] + a2·x[i−2] + b1·y[i−1] + b2·y[i−2]. */
export interface LowPassCoefficients {
  readonly a0: number;
  readonly a1: number;
  readonly a2: number;
  readonly b1: number;
  readonly b2: number;
}

/**
 * Winter's second-order Butterworth low-pass coefficients, with the corner moved up so that after `passes` passes
 * the gain at `cutoffHz` is 1/√2 (two passes: forward and back).
 *
 * @param cutoffHz above 0 and below half of `sampleHz`; anything else is a caller's bug and throws
 * @see Winter, Biomechanics and Motor Control of Human Movement, the chapter on kinematics; corner correction
 *   C = (2^(1/passes) − 1)^¼.
 */
export function butterworthCoefficients(cutoffHz: number, sampleHz: number, passes = 2): LowPassCoefficients {
  if (!(cutoffHz > 0) || !(cutoffHz < sampleHz / 2)) {
    throw new RangeError(`cut-off ${cutoffHz} Hz must lie between 0 and half of ${sampleHz} Hz`);
  }
  const correction = (2 ** (1 / passes) - 1) ** 0.25;
  const corner = Math.tan((Math.PI * cutoffHz) / sampleHz) / correction;
  const first = Math.SQRT2 * corner;
  const second = corner * corner;
  const a0 = second / (1 + first + second);
  const third = (2 * a0) / second;
  return { a0, a1: 2 * a0, a2: a0, b1: third - 2 * a0, b2: 1 - 2 * a0 - third };
}

function singlePass(samples: Float64Array, c: LowPassCoefficients): Float64Array {
  const out = new Float64Array(samples.length);
  const start = samples[0] as number;
  // a filter that has always seen the first value starts without a transient
  let x1 = start;
  let x2 = start;
  let y1 = start;
  let y2 = start;
  for (let i = 0; i < samples.length; i++) {
    const x = samples[i] as number;
    const y = c.a0 * x + c.a1 * x1 + c.a2 * x2 + c.b1 * y1 + c.b2 * y2;
    out[i] = y;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
  }
  return out;
}

function oddExtension(samples: readonly number[], pad: number): Float64Array {
  const n = samples.length;
  const out = new Float64Array(n + 2 * pad);
  const first = samples[0] as number;
  const last = samples[n - 1] as number;
  for (let i = 0; i < pad; i++) {
    out[i] = 2 * first - (samples[pad - i] ?? first);
    out[pad + n + i] = 2 * last - (samples[n - 2 - i] ?? last);
  }
  for (let i = 0; i < n; i++) out[pad + i] = samples[i] as number;
  return out;
}

/** Samples of point-mirrored run-up before the filter's memory has faded to 1e-9, at most what the data hold. */
export function runUpLength(c: LowPassCoefficients, samples: number): number {
  const poleRadius = Math.sqrt(Math.abs(c.b2));
  const needed = Math.ceil(Math.log(1e-9) / Math.log(Math.max(1e-6, poleRadius)));
  return Math.max(0, Math.min(samples - 1, needed));
}

/**
 * Zero-lag low-pass of evenly spaced samples: forward and back, over data extended at both ends by their own point
 * mirror image. Both orders are averaged, so a reversed input gives exactly the reversed output.
 * Gain at `cutoffHz` is 1/√2; constants and straight lines pass unchanged. Fewer than two samples come back as they
 * are. Cost: linear.
 *
 * @param cutoffHz 6 Hz is common in swimming (from memory, no source read)
 */
export function zeroLagLowPass(
  samples: readonly number[],
  cutoffHz: number,
  sampleHz: number,
): readonly number[] {
  const n = samples.length;
  if (n < 2) return [...samples];
  const c = butterworthCoefficients(cutoffHz, sampleHz);
  const pad = runUpLength(c, n);
  const extended = oddExtension(samples, pad);
  const forwardFirst = singlePass(singlePass(extended, c).reverse(), c).reverse();
  const backwardFirst = singlePass(singlePass(extended.slice().reverse(), c).reverse(), c);
  return Array.from({ length: n }, (_, i) => {
    return ((forwardFirst[pad + i] as number) + (backwardFirst[pad + i] as number)) / 2;
  });
}
