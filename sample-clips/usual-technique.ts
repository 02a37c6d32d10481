import type { Technique } from './model/technique';

/** How the invented squad usually swims: made up, nobody's measurements. */
export const butterfly: Technique = {
  kind: 'butterfly',
  arms: 'stroking',
  onBack: false,
  period: 1.15,
  startTime: 0.3,
  kicks: [
    { top: 0, bottom: 0.2, size: 1 },
    { top: 0.485, bottom: 0.675, size: 0.86 },
  ],
  toeSwing: 0.225,
  waveSpeed: 5.2,
  speed: 1.36,
  speedWave: [
    { swing: 0.08, phase: 4.2 },
    { swing: 0.13, phase: 1.1 },
  ],
  depth: -0.185,
  size: 2.3,
  startX: 1.02,
  breathEvery: 2,
};
export const kick: Technique = {
  kind: 'kick',
  arms: 'stretched',
  onBack: false,
  period: 0.46,
  startTime: 0.12,
  kicks: [{ top: 0, bottom: 0.47, size: 1 }],
  toeSwing: 0.235,
  waveSpeed: 4.7,
  speed: 1.34,
  speedWave: [
    { swing: 0.07, phase: 2.4 },
    { swing: 0.05, phase: 0.8 },
  ],
  depth: -0.8,
  size: 2.3,
  startX: 1.1,
  breathEvery: 0,
};
