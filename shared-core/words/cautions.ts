import { words } from './words';

/** Cautions for practice and film. */
export const cautionsWords = words({
  americanRedCross:
    'American Red Cross / YMCA statement 2015 on hypoxic blackout, in our own words; the statement was not read in full',
  ourOwnWordsCommon: 'our own words, common practice, no source',
  noDeepOrFast:
    'No deep or fast breathing before going under: breathe as usual, and come up whenever you want air.',
  oneUnderwaterRepeat:
    'One underwater repeat at a time; no repeat starts before the one before has ended and been breathed out.',
  restUntilBreathing: 'Rest until breathing is quiet before the next underwater repeat.',
  someoneWhoCan: 'Someone who can act watches this swimmer, and only this swimmer, for the whole repeat.',
  notContestNeither: 'Not a contest: neither distance under water nor time without breath is an aim here.',
  ourOwnRule: 'our own rule',
  backKnowFlags: 'On the back: know the flags and count in to the wall; under water, keep one hand ahead.',
  diveOnlyWhere:
    'Dive only where the water is deep enough by the local rule; with blocks 1.35 m is the least.',
  worldAquaticsFacilities: 'World Aquatics facilities rules; the local rule goes first',
  keepCamerasPoles: 'Keep cameras, poles and cables out of the zones for diving and pushing off.',
  nearBasinOnly: 'Near the basin only on battery. Anything on the mains is for a licensed electrician.',
  afterIec60364: 'after IEC 60364-7-702 (zones of basins), in our own words',
  filmMinorOnly: 'Film a minor only with the guardian’s written consent, and delete on request.',
  ourOwnRuleLocal: 'our own rule; the local law goes first',
  noOneElseShot: 'No one else in the shot.',
  stopPainSeeProfessional: 'Stop on pain, and see a professional about it. Nothing here is medical advice.',
  rulesPoolFederation: 'The rules of the pool and of the federation go before anything written here.',
});
