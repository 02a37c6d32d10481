import { cautionsWords } from '../words/cautions';

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

const underwater = cautionsWords('americanRedCross');
const ours = cautionsWords('ourOwnWordsCommon');

export const cautions: Readonly<Record<CautionCode, Caution>> = {
  'no-hyperventilating': {
    words: cautionsWords('noDeepOrFast'),
    source: underwater,
  },
  'one-repeat-at-a-time': {
    words: cautionsWords('oneUnderwaterRepeat'),
    source: underwater,
  },
  'rest-between-repeats': {
    words: cautionsWords('restUntilBreathing'),
    source: underwater,
  },
  'someone-watching': {
    words: cautionsWords('someoneWhoCan'),
    source: underwater,
  },
  'not-for-distance-or-breath': {
    words: cautionsWords('notContestNeither'),
    source: cautionsWords('ourOwnRule'),
  },
  'on-the-back-wall': {
    words: cautionsWords('backKnowFlags'),
    source: ours,
  },
  'dive-depth': {
    words: cautionsWords('diveOnlyWhere'),
    source: cautionsWords('worldAquaticsFacilities'),
  },
  'dive-zone-clear': {
    words: cautionsWords('keepCamerasPoles'),
    source: ours,
  },
  'battery-only': {
    words: cautionsWords('nearBasinOnly'),
    source: cautionsWords('afterIec60364'),
  },
  'film-consent': {
    words: cautionsWords('filmMinorOnly'),
    source: cautionsWords('ourOwnRuleLocal'),
  },
  'no-one-else-in-shot': {
    words: cautionsWords('noOneElseShot'),
    source: cautionsWords('ourOwnRuleLocal'),
  },
  'stop-on-pain': {
    words: cautionsWords('stopPainSeeProfessional'),
    source: cautionsWords('ourOwnRule'),
  },
  'local-rules': {
    words: cautionsWords('rulesPoolFederation'),
    source: cautionsWords('ourOwnRule'),
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
