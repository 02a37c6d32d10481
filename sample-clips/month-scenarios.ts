import type { Camera } from './drawing/camera';
import { normal, seeded } from './model/seeded';
import type { Technique } from './model/technique';
import { card, type Scenario } from './scenario';
import { ansel, juno, pip } from './squad-looks';
import { split, under } from './usual-camera';
import { butterfly, kick } from './usual-technique';

/** Small pictures keep a month of films small: half the usual size, seen from the same place. */
const small = (camera: Camera): Camera => ({
  ...camera,
  width: camera.width / 2,
  height: camera.height / 2,
  metresPerPixel: camera.metresPerPixel * 2,
  surfaceRow: Math.round(camera.surfaceRow / 2),
});

/**
 * From repeat to repeat a swimmer is never quite the same. Standard deviations of speed (m/s), cycle (s) and kick (m), made
 * up so that some differences come out clear and others not.
 */
const spread = { speed: 0.018, period: 0.007, toeSwing: 0.005 } as const;

function repeatOf(technique: Technique, seed: number): Technique {
  const random = seeded(seed);
  return {
    ...technique,
    speed: technique.speed + spread.speed * normal(random),
    period: technique.period + spread.period * normal(random),
    toeSwing: technique.toeSwing + spread.toeSwing * normal(random),
  };
}

type Part = Pick<Scenario, 'id' | 'technique' | 'looks' | 'camera' | 'pictures'> & {
  readonly card: Partial<Scenario['card']>;
};

const filmed = ({ card: said, ...part }: Part): Scenario => ({
  ...part,
  file: `${part.id.replace(/^sample-/, '')}.mp4`,
  captureRate: 60,
  storedRate: 60,
  shape: 'plain',
  card: { ...card, aids: [], ...said },
  marked: 1,
  lineEvery: 0,
  withScale: true,
});

const underwater = {
  swimmerId: 'juno',
  swimmerName: 'Juno',
  date: '2026-05-26',
  stroke: 'dolphin-kick',
  drill: 'streamlined kick under water',
  arms: 'stretched',
  effort: 'strong',
  distanceMetres: 15,
} as const;

/** Six whole kicks and a little more: as many as a trial asks for, no longer under water than that. */
const kickPictures = 186;

/** How deep Juno kicks in the trial, and how fast she is there: made up. */
const junoAt = { deep: { depth: -0.8, speed: 1.34 }, shallow: { depth: -0.42, speed: 1.24 } } as const;

const depthTrial: readonly Scenario[] = (['shallow', 'deep'] as const).flatMap((depth, at) =>
  [1, 2, 3, 4].map((repeat) =>
    filmed({
      id: `sample-juno-${depth}-${repeat}`,
      technique: repeatOf({ ...kick, ...junoAt[depth], startX: 1.1 }, 100 * (at + 1) + repeat),
      looks: juno,
      camera: small(under),
      pictures: kickPictures,
      card: { ...underwater, depth },
    }),
  ),
);

/** Ansel's two ways to kick: about as fast as each other, as far as three repeats can tell. */
const anselWith = {
  'large kicks': { period: 0.52, toeSwing: 0.255, speed: 1.3 },
  'quick kicks': { period: 0.45, toeSwing: 0.215, speed: 1.315 },
} as const;

const kickTrial: readonly Scenario[] = (['large kicks', 'quick kicks'] as const).flatMap((tag, at) =>
  [1, 2, 3].map((repeat) =>
    filmed({
      id: `sample-ansel-${tag.replace(' ', '-')}-${repeat}`,
      technique: repeatOf({ ...kick, ...anselWith[tag] }, 300 + 100 * at + repeat),
      looks: ansel,
      camera: small(under),
      pictures: 204,
      card: { ...underwater, swimmerId: 'ansel', swimmerName: 'Ansel', date: '2026-05-28', tags: [tag] },
    }),
  ),
);

/** Pip's month: kick two comes a little earlier each week, and with the hands at the end. Shares of the stroke. */
const pipSecondKick = [
  ['2026-05-05', 0.565, 1.29],
  ['2026-05-12', 0.545, 1.31],
  ['2026-05-19', 0.52, 1.335],
  ['2026-05-26', 0.495, 1.36],
  ['2026-05-28', 0.485, 1.37],
] as const;

const pipSeason: readonly Scenario[] = pipSecondKick.map(([date, top, speed], at) =>
  filmed({
    id: `sample-pip-${date}`,
    technique: repeatOf(
      {
        ...butterfly,
        kicks: [
          { top: 0, bottom: 0.2, size: 1 },
          { top, bottom: top + 0.19, size: 0.84 },
        ],
        speed,
      },
      500 + at,
    ),
    looks: pip,
    camera: small(split),
    pictures: 252,
    card: { date },
  }),
);

/** The swims of the month beside the first seven: two trials and a season. Everybody in them is invented. */
export const monthScenarios: readonly Scenario[] = [...pipSeason, ...depthTrial, ...kickTrial];
