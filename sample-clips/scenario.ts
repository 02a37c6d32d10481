import type { ConditionTags } from '#core/swim-file/condition-tags';
import type { SwimCard } from '#core/swim-file/swim-schema';
import type { Camera } from './drawing/camera';
import type { Looks } from './drawing/draw-body';
import type { Technique } from './model/technique';
import { ansel, juno, pip } from './squad-looks';
import { split, under } from './usual-camera';
import { butterfly, kick } from './usual-technique';

/** One sample swim of the invented squad: who, what, how filmed, and how much of it is marked. */
export interface Scenario {
  readonly id: string;
  readonly file: string;
  readonly technique: Technique;
  readonly looks: Looks;
  readonly camera: Camera;
  /** Pictures a real second, and how many. */
  readonly captureRate: number;
  readonly pictures: number;
  /** Pictures a second as stored. */
  readonly storedRate: number;
  readonly shape: 'plain' | 'vp9' | 'slow-motion' | 'phone';
  readonly card: Omit<SwimCard, 'invented' | 'view' | 'note' | 'conditions'> & {
    readonly note?: string;
    /** Free tags, and how deep, for trials. */
    readonly tags?: readonly string[];
    readonly depth?: ConditionTags['depth'];
  };
  /** Share of the swim that is marked, from its start. */
  readonly marked: number;
  /** Body lines are laid on the frames of events, and on every so many frames besides; 0: on events only. */
  readonly lineEvery: number;
  readonly withScale: boolean;
  /** What makes the pictures harder to see; only for tests. */
  readonly trouble?: {
    /** Bubbles beside the usual number. */
    readonly bubbles?: number;
    /** Sun on the lens, 0 to 1. */
    readonly glare?: number;
    /** An ffmpeg video filter on the drawn pictures. */
    readonly filter?: string;
    /** Coarseness of the coded picture, ffmpeg's constant rate factor. */
    readonly crf?: number;
    /** Seconds by which the far arm and leg lag behind the near ones, so that they cross. */
    readonly farLag?: number;
  };
}

/** What the cards of most samples say. */
export const card = {
  swimmerId: 'pip',
  swimmerName: 'Pip',
  date: '2026-05-14',
  stroke: 'butterfly',
  drill: '',
  arms: 'stroking',
  sideUp: 'front',
  aids: [],
  effort: 'steady',
  distanceMetres: 25,
} as const;

/** The sample swims. Everybody in them is invented. */
export const scenarios: readonly Scenario[] = [
  {
    id: 'sample-butterfly-together',
    file: 'butterfly-together.mp4',
    technique: butterfly,
    looks: pip,
    camera: split,
    captureRate: 60,
    pictures: 252,
    storedRate: 60,
    shape: 'plain',
    card: { ...card, aids: [] },
    marked: 1,
    lineEvery: 4,
    withScale: true,
  },
  {
    id: 'sample-butterfly-late-kick',
    file: 'butterfly-late-kick.mp4',
    technique: {
      ...butterfly,
      kicks: [
        { top: 0, bottom: 0.2, size: 1 },
        { top: 0.575, bottom: 0.77, size: 0.8 },
      ],
      speed: 1.3,
      speedWave: [
        { swing: 0.12, phase: 4.2 },
        { swing: 0.16, phase: 1.4 },
      ],
    },
    looks: pip,
    camera: split,
    captureRate: 60,
    pictures: 252,
    storedRate: 60,
    shape: 'plain',
    card: { ...card, aids: [], date: '2026-05-07', note: 'Second kick comes late.', tags: ['kick 2 late'] },
    marked: 1,
    lineEvery: 0,
    withScale: true,
  },
  {
    id: 'sample-streamline-kick',
    file: 'streamline-kick.mp4',
    technique: kick,
    looks: juno,
    camera: under,
    captureRate: 120,
    pictures: 336,
    storedRate: 120,
    shape: 'plain',
    card: {
      ...card,
      swimmerId: 'juno',
      swimmerName: 'Juno',
      stroke: 'dolphin-kick',
      drill: 'streamlined kick under water',
      arms: 'stretched',
      aids: [],
      effort: 'strong',
      distanceMetres: 15,
    },
    marked: 1,
    lineEvery: 4,
    withScale: true,
  },
  {
    id: 'sample-arms-folded',
    file: 'arms-folded.webm',
    technique: {
      ...kick,
      arms: 'folded',
      period: 0.56,
      speed: 0.92,
      toeSwing: 0.22,
      waveSpeed: 4.1,
      depth: -0.27,
      startX: 1.35,
    },
    looks: { ...juno, snorkel: true },
    camera: { ...split, width: 960, height: 540, metresPerPixel: 0.0064, surfaceRow: 120 },
    captureRate: 60,
    pictures: 240,
    storedRate: 60,
    shape: 'vp9',
    card: {
      ...card,
      swimmerId: 'juno',
      swimmerName: 'Juno',
      date: '2026-05-21',
      stroke: 'dolphin-kick',
      drill: 'kick with arms folded',
      arms: 'folded',
      aids: ['snorkel'],
      effort: 'easy',
    },
    marked: 0.55,
    lineEvery: 0,
    withScale: false,
  },
  {
    id: 'sample-fins-slow-motion',
    file: 'fins-slow-motion.mp4',
    technique: {
      ...kick,
      period: 0.7,
      toeSwing: 0.25,
      waveSpeed: 4.2,
      speed: 1.68,
      startX: 1.5,
      speedWave: [
        { swing: 0.06, phase: 2.4 },
        { swing: 0.03, phase: 0.8 },
      ],
    },
    looks: { ...ansel, fins: true },
    camera: { ...under, travel: 'left' },
    captureRate: 240,
    pictures: 480,
    storedRate: 30,
    shape: 'slow-motion',
    card: {
      ...card,
      swimmerId: 'ansel',
      swimmerName: 'Ansel',
      stroke: 'dolphin-kick',
      drill: 'kick with fins',
      arms: 'stretched',
      aids: ['fins'],
      effort: 'steady',
    },
    marked: 1,
    lineEvery: 0,
    withScale: true,
  },
  {
    id: 'sample-phone-portrait',
    file: 'phone-portrait.mp4',
    technique: { ...kick, period: 0.54, speed: 0.98, toeSwing: 0.22, startX: 1.75, depth: -0.55, size: 2.3 },
    looks: ansel,
    camera: {
      width: 720,
      height: 1280,
      metresPerPixel: 0.0047,
      surfaceRow: 430,
      travel: 'left',
      eye: 0,
      carried: { speed: 0.95, sway: 0.05 },
    },
    captureRate: 30,
    pictures: 110,
    storedRate: 30,
    shape: 'phone',
    card: {
      ...card,
      swimmerId: 'ansel',
      swimmerName: 'Ansel',
      date: '2026-05-20',
      stroke: 'dolphin-kick',
      drill: 'streamlined kick, easy',
      arms: 'stretched',
      aids: [],
      effort: 'easy',
      note: 'Filmed on a phone held upright, walking along; not marked yet.',
    },
    marked: 0,
    lineEvery: 0,
    withScale: false,
  },
  {
    id: 'sample-kick-on-back',
    file: 'kick-on-back.mp4',
    technique: {
      ...kick,
      onBack: true,
      period: 0.5,
      speed: 1.06,
      toeSwing: 0.215,
      depth: -0.62,
      kicks: [{ top: 0, bottom: 0.53, size: 1 }],
    },
    looks: pip,
    camera: { ...split, width: 960, height: 540, metresPerPixel: 0.0066, surfaceRow: 124 },
    captureRate: 60,
    pictures: 216,
    storedRate: 60,
    shape: 'plain',
    card: {
      ...card,
      date: '2026-05-21',
      stroke: 'dolphin-kick',
      drill: 'streamlined kick on the back',
      arms: 'stretched',
      sideUp: 'back',
      aids: [],
      effort: 'steady',
    },
    marked: 1,
    lineEvery: 0,
    withScale: true,
  },
];
