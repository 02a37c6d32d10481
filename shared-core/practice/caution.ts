/** Cautions, by what brings them. Closed: each has its words below. */
export const cautionCodes = [
  'no-hyperventilating',
  'one-repeat-at-a-time',
  'rest-between-repeats',
  'someone-watching',
  'not-for-distance-or-breath',
  'on-the-back-wall',
  'dive-depth',
  'dive-zone-clear',
  'battery-only',
  'film-consent',
  'no-one-else-in-shot',
  'stop-on-pain',
  'local-rules',
] as const;
export type CautionCode = (typeof cautionCodes)[number];

export interface Caution {
  readonly words: string;
  readonly source: string;
}

const underwater =
  'American Red Cross / YMCA statement 2015 on hypoxic blackout, in our own words; the statement was not read in full';
const ours = 'our own words, common practice, no source';

export const cautions: Readonly<Record<CautionCode, Caution>> = {
  'no-hyperventilating': {
    words:
      'No deep or fast breathing before going under: breathe as usual, and come up whenever you want air.',
    source: underwater,
  },
  'one-repeat-at-a-time': {
    words:
      'One underwater repeat at a time; no repeat starts before the one before has ended and been breathed out.',
    source: underwater,
  },
  'rest-between-repeats': {
    words: 'Rest until breathing is quiet before the next underwater repeat.',
    source: underwater,
  },
  'someone-watching': {
    words: 'Someone who can act watches this swimmer, and only this swimmer, for the whole repeat.',
    source: underwater,
  },
  'not-for-distance-or-breath': {
    words: 'Not a contest: neither distance under water nor time without breath is an aim here.',
    source: 'our own rule',
  },
  'on-the-back-wall': {
    words: 'On the back: know the flags and count in to the wall; under water, keep one hand ahead.',
    source: ours,
  },
  'dive-depth': {
    words: 'Dive only where the water is deep enough by the local rule; with blocks 1.35 m is the least.',
    source: 'World Aquatics facilities rules; the local rule goes first',
  },
  'dive-zone-clear': {
    words: 'Keep cameras, poles and cables out of the zones for diving and pushing off.',
    source: ours,
  },
  'battery-only': {
    words: 'Near the basin only on battery. Anything on the mains is for a licensed electrician.',
    source: 'after IEC 60364-7-702 (zones of basins), in our own words',
  },
  'film-consent': {
    words: 'Film a minor only with the guardian’s written consent, and delete on request.',
    source: 'our own rule; the local law goes first',
  },
  'no-one-else-in-shot': {
    words: 'No one else in the shot.',
    source: 'our own rule; the local law goes first',
  },
  'stop-on-pain': {
    words: 'Stop on pain, and see a professional about it. Nothing here is medical advice.',
    source: 'our own rule',
  },
  'local-rules': {
    words: 'The rules of the pool and of the federation go before anything written here.',
    source: 'our own rule',
  },
};

/** Cautions of every underwater repeat, the gravest first. */
export const underwaterCautions: readonly CautionCode[] = [
  'no-hyperventilating',
  'someone-watching',
  'one-repeat-at-a-time',
  'rest-between-repeats',
  'not-for-distance-or-breath',
  'local-rules',
];

/** Cautions wherever a camera is planned. */
export const filmingCautions: readonly CautionCode[] = [
  'film-consent',
  'no-one-else-in-shot',
  'dive-zone-clear',
  'battery-only',
  'local-rules',
];
