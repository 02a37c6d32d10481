import type { LandmarkName } from '../../../marks/landmark';
import { type Harmonic, waveHarmonics } from '../../../signal/wave-harmonics';
import type { BodyContext } from '../context/body-context';
import { type LandmarkWave, landmarkWave, type WaveResult } from './landmark-wave';
import { keptWith } from '../../../units/kept-with';

/** Where the kick's wave of a landmark's height crests, counted from the start of the first cycle. */
export interface KickPhase {
  readonly wave: LandmarkWave;
  /** The harmonic of the fitted wave that goes once a kick. */
  readonly harmonic: Harmonic;
}

const kickHarmonic = keptWith(harmonicOf);

/** The kick's own harmonic of a landmark's height, or why it can't be told. */
export function kickPhase(
  context: BodyContext,
  landmark: LandmarkName,
): (KickPhase & { readonly ok: true }) | Extract<WaveResult, { readonly ok: false }> {
  const { cycles } = context;
  if (cycles?.contradiction) return { ok: false, reasons: [cycles.contradiction] };
  const trace = context.trace(landmark);
  const result = landmarkWave(context, landmark, trace, trace.y);
  if (!result.ok) return result;
  const { wave } = result;
  const harmonic = kickHarmonic(wave);
  return harmonic
    ? { ok: true, wave, harmonic }
    : { ok: false, reasons: [{ code: 'needs-denser-trace', landmark }] };
}

function harmonicOf({ frame, pooled, sd }: LandmarkWave): Harmonic | null {
  const origin = frame.spans[0]?.start ?? 0;
  return waveHarmonics(pooled, sd ** 2, origin)[frame.kickHarmonic - 1] ?? null;
}
