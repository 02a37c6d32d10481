import type { SwimCard } from '#core/swim-file/swim-schema';
import type { Camera } from './drawing/camera';
import type { Looks } from './drawing/draw-swimmer';
import type { Technique } from './model/swimmer-model';

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
  readonly card: Omit<SwimCard, 'invented' | 'view' | 'note'> & { readonly note?: string };
  /** Share of the swim that is marked, from its start. */
  readonly marked: number;
  readonly withScale: boolean;
}

const pip: Looks = { skin: '#f0caa8', shade: '#a06f50', suit: '#1d2f4f', cap: '#f2f5f6', fins: false };
const juno: Looks = { skin: '#b07a55', shade: '#6b4429', suit: '#5a1f3d', cap: '#f6c945', fins: false };
const ansel: Looks = { skin: '#e9bd98', shade: '#93623f', suit: '#0e3b33', cap: '#d8413a', fins: false };

const butterfly: Technique = {
  kind: 'butterfly',
  arms: 'stroking',
  period: 1.15,
  kicks: [
    { top: 0.0, bottom: 0.17 },
    { top: 0.43, bottom: 0.6 },
  ],
  speed: 1.45,
  surge: 0.035,
  depth: -0.2,
  size: 2.3,
  kneeBend: 34,
  startX: 1.35,
  startTime: 0.25,
};
const wide: Camera = { width: 1280, height: 720, metresPerPixel: 0.0064, surfaceRow: 170, travel: 'right' };
const near: Camera = { width: 1280, height: 720, metresPerPixel: 0.0046, surfaceRow: 130, travel: 'right' };
const kick: Technique = {
  kind: 'kick',
  arms: 'stretched',
  period: 0.46,
  kicks: [{ top: 0, bottom: 0.47 }],
  speed: 1.35,
  surge: 0.012,
  depth: -0.95,
  size: 2.3,
  kneeBend: 52,
  startX: 1.25,
  startTime: 0.08,
};
const card = {
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
    camera: wide,
    captureRate: 60,
    pictures: 252,
    storedRate: 60,
    shape: 'plain',
    card: { ...card, aids: [] },
    marked: 1,
    withScale: true,
  },
  {
    id: 'sample-butterfly-late-kick',
    file: 'butterfly-late-kick.mp4',
    technique: {
      ...butterfly,
      kicks: [
        { top: 0.0, bottom: 0.17 },
        { top: 0.54, bottom: 0.72 },
      ],
      speed: 1.36,
    },
    looks: pip,
    camera: wide,
    captureRate: 60,
    pictures: 252,
    storedRate: 60,
    shape: 'plain',
    card: { ...card, aids: [], date: '2026-05-07', note: 'Second kick comes late.' },
    marked: 1,
    withScale: true,
  },
  {
    id: 'sample-streamline-kick',
    file: 'streamline-kick.mp4',
    technique: kick,
    looks: juno,
    camera: near,
    captureRate: 120,
    pictures: 312,
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
    withScale: true,
  },
  {
    id: 'sample-arms-folded',
    file: 'arms-folded.webm',
    technique: { ...kick, arms: 'folded', period: 0.52, speed: 1.02, kneeBend: 56, depth: -0.7 },
    looks: juno,
    camera: near,
    captureRate: 60,
    pictures: 210,
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
      aids: [],
      effort: 'easy',
    },
    marked: 0.55,
    withScale: false,
  },
  {
    id: 'sample-fins-slow-motion',
    file: 'fins-slow-motion.mp4',
    technique: { ...kick, period: 0.72, speed: 1.7, kneeBend: 46, startX: 1.5 },
    looks: { ...ansel, fins: true },
    camera: near,
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
    withScale: true,
  },
  {
    id: 'sample-phone-portrait',
    file: 'phone-portrait.mp4',
    technique: { ...kick, period: 0.5, speed: 0.55, startX: 1.3, size: 2.0, depth: -0.6 },
    looks: ansel,
    camera: { width: 540, height: 960, metresPerPixel: 0.0066, surfaceRow: 330, travel: 'left' },
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
      drill: 'kick in place, easy',
      arms: 'stretched',
      aids: [],
      effort: 'easy',
      note: 'Filmed on a phone held upright; not marked yet.',
    },
    marked: 0,
    withScale: false,
  },
];
