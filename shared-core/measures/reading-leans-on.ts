/** What a reading stands or falls with, told by its name: the catalogue's ids are built from these words. */
const patterns = {
  /** How often the kick comes: its own readings, and what is made with its frequency or its wave. */
  kickRhythm:
    /^(kick-(frequency|tempo|rate-per-minute)|distance-per-kick|strouhal|froude|body-wave-(speed|length)|phase-lag-|wave-speed-)/,
  /** Which half of a kick is which in time. */
  halfKicks: /^(down-kick-time|up-kick-time|down-up-ratio)$/,
  /** Which marks of the feet are tops and which bottoms. */
  kickEnds:
    /^(down-kick-time|up-kick-time|down-up-ratio|gap-|kick[12]-|kick-amplitude-toe|strouhal)|-at-kick-(top|bottom)$/,
  /** How often the stroke comes. */
  strokeRhythm:
    /^(stroke-(rate|length|index)|breathing-every|phase-(entry|pull|push|recovery)|gap-|kick[12]-|harmonic-|undulation-)/,
  /** Waves that go once a cycle, whichever the cycle is. */
  cycleWaves: /^(harmonic-|undulation-|foot-speed-)/,
  /** Lags of the trunk, in which the stroke's own wave is large. */
  trunkLags: /^(phase-lag|wave-speed)-(ear-shoulder|shoulder-hip|hip-knee)$/,
  /** The wave down the whole body. */
  bodyWave: /^(body-wave-(speed|length)|froude)$/,
  /** Strokes with their hand marks. */
  handPhases: /^(phase-(entry|pull|push|recovery)|gap-|kick[12]-)/,
  /** The size of the kick. */
  kickSize: /^(kick-amplitude-toe|strouhal|undulation-|harmonic-[123]-|foot-speed-)/,
} as const;

export type LeansOn = keyof typeof patterns;

/** Whether a reading leans on that. */
export const leansOn = (id: string, what: LeansOn): boolean => patterns[what].test(id);
