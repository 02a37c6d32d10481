/** How one invented swimmer moves. Lengths in metres, times in real seconds, shares of the cycle from 0 to 1. */
export interface Technique {
  readonly kind: 'butterfly' | 'kick';
  readonly arms: 'stroking' | 'stretched' | 'folded';
  readonly onBack: boolean;
  /** Seconds of one stroke (butterfly, two kicks) or of one kick. */
  readonly period: number;
  /** Real time at which the first cycle begins: the toes' first top, and about the hands' entry. */
  readonly startTime: number;
  /** When in the cycle the toes turn, and how large the kick is beside the largest. */
  readonly kicks: readonly { readonly top: number; readonly bottom: number; readonly size: number }[];
  /** Half of the toes' peak-to-peak height in the largest kick. */
  readonly toeSwing: number;
  /** Speed at which the kick's wave runs from the hands to the toes along the body. */
  readonly waveSpeed: number;
  /** Mean forward speed. */
  readonly speed: number;
  /** Within-cycle wave of the hip's speed: relative swing and phase (radians) of the first and second harmonic. */
  readonly speedWave: readonly { readonly swing: number; readonly phase: number }[];
  /** Mean height of the hip over the still surface (negative: under it). */
  readonly depth: number;
  /** Fingertip to toe in streamline. */
  readonly size: number;
  /** Hip's place along the pool at time 0. */
  readonly startX: number;
  /** The head comes up to breathe in every so many strokes; 0: never. */
  readonly breathEvery: number;
}

/** Segment lengths as shares of a streamlined body, fingertip to toe; they sum to 1. Our own round proportions. */
export const lengths = {
  hand: 0.078,
  forearm: 0.11,
  upperArm: 0.125,
  trunk: 0.225,
  thigh: 0.185,
  shank: 0.18,
  foot: 0.097,
  /** Shoulder to ear; beside the chain. */
  neck: 0.075,
} as const;
export type Segment = keyof typeof lengths;

/** Distance of each joint of the chain from the toes along the body, as a share of its length. */
export const fromToe = {
  toe: 0,
  ankle: 0.097,
  knee: 0.277,
  hip: 0.462,
  shoulder: 0.687,
  elbow: 0.812,
  wrist: 0.922,
  fingertip: 1,
} as const;
export type ChainJoint = keyof typeof fromToe;

/** Height swing of each joint beside the toes': smallest at the shoulders, growing to the toes. Our own figures. */
export const swingGain: Readonly<Record<ChainJoint, number>> = {
  toe: 1,
  ankle: 0.79,
  knee: 0.44,
  hip: 0.23,
  shoulder: 0.1,
  elbow: 0.1,
  wrist: 0.12,
  fingertip: 0.15,
};

/** Height at rest relative to the hip, shares of body length: the knees hang a little, so that they bend the right way. */
export const restHeight: Readonly<Record<ChainJoint, number>> = {
  toe: 0.026,
  ankle: 0.02,
  knee: -0.022,
  hip: 0,
  shoulder: 0,
  elbow: 0.004,
  wrist: 0.006,
  fingertip: 0.004,
};
