import { words } from './words';

/** Definitions of the readings of the body wave. */
export const waveReadingsWords = words({
  phaseLagOver:
    'Phase lag over distance: Sanders, Cappaert, Devlin 1995, J Biomech 28:9–16; overall by regression (our own definition)',
  bodyWaveSpeed: 'Body-wave speed',
  shoulderToeAlong: 'shoulder to toe, along travel',
  speedAtWhich:
    'Speed at which the kick’s wave runs down the body, along travel: angular frequency of the kick over the slope of its phase lag on mean distance along travel, shoulder to toe. Positive toward the toes. Along the bent body it is a few percent more, which the interval of this swimmer covers.',
  howFastWaveTravels:
    'How fast the wave travels back. Against swimming speed it tells how much of the work goes backward.',
  howFastWaveRuns: 'How fast the wave runs from your shoulders to your toes.',
  bodyWaveLength: 'Body-wave length',
  oneFullWaveAlong: 'one full wave, along travel',
  lengthOneFull:
    'Length of one full wave of the kick, along travel: 2π over the slope of phase lag on mean distance along travel, shoulder to toe.',
  longWaveMeans: 'A long wave means the body moves more as a plank, a short one that it snakes.',
  howLongOneWave: 'How long one wave along your body is.',
  kickAmplitude: 'Kick amplitude',
  toeHeightTop: 'toe height, top to bottom',
  peakPeakMean:
    'Peak-to-peak: mean height of each kick top above the straight line between its neighbouring bottoms, and of each bottom below the line between its tops, at the toes; so drift in depth or camera does not count.',
  howBigKickRead:
    'How big the kick is. Read it with the frequency: the same speed can come from big or quick kicks.',
  howFarYourFeet: 'How far your feet travel from the top to the bottom of a kick.',
  ourOwnDefinition: 'Our own definition of the usual peak-to-peak amplitude (as in Connaboy et al. 2010)',
  kickAmplitudeBody: 'Kick amplitude, of body length',
  toeHeightBody: 'toe height / body length',
  kickAmplitudeDivided: 'Kick amplitude divided by body length (fingertip to toe in streamline).',
  sizeKickMade: 'The size of the kick made fair between tall and short swimmers.',
  howBigYourKick: 'How big your kick is for your size.',
  bodyLengthFrom: 'Body length from fingertip to toe: von Loebbecke et al. 2009',
  phaseLagBetween:
    'Phase lag between neighbouring landmarks: Sanders, Cappaert, Devlin 1995, J Biomech 28:9–16; c = d · 2π(k/T) / Δφ',
  phaseLag: 'Phase lag, {near} to {far}',
  n360OneKickLater: '360° = one kick later',
  howMuchLater:
    'How much later in the kick the {far} crest than the {near}: difference of the phases of the kick’s harmonic of their heights, degrees of a kick, on the turn nearest to a usual wave’s. Positive: the wave runs toward the toes.',
  whetherWavePasses:
    'Whether the wave passes on from the {near} to the {far}, or the two move as one piece (near 0°).',
  howMuchLaterThan: 'How much later than your {near} your {far} go up and down.',
  waveSpeed: 'Wave speed, {near} to {far}',
  distanceAlongTravel: 'distance along travel / time of the lag',
  meanDistanceAlong:
    'Mean distance along travel from the {near} to the {far} times the kick’s angular frequency, over the phase lag between them. Only where the lag is well above its own error.',
  howFastWaveRunsOver:
    'How fast the wave runs over this part of the body; held against its neighbours it shows where the wave is passed on slowly or quickly.',
  howFastWaveRunsFrom: 'How fast the wave runs from your {near} to your {far}.',
  sandersCappaertDevlin:
    'Sanders, Cappaert, Devlin 1995, J Biomech 28:9–16 (vertical undulation along the body)',
  centreMass: 'centre of mass',
  undulation: 'Undulation of the {word}',
  peakPeakHeight: 'peak-to-peak height per cycle',
  highestMinusLowest:
    'Highest minus lowest point of the {word} in one cycle, square to travel, drift in depth taken off: from waves fitted to the marks of each stroke (hand entry to hand entry), or of each kick when no strokes are marked; mean over cycles.',
  howMuchRiseFall:
    'How much the {word} rise and fall. Read down the body it shows where the wave starts and where it grows.',
  howFarYourMove: 'How far your {word} move up and down.',
  undulationBodyLength: 'Undulation of the {word}, of body length',
  peakPeakHeightBody: 'peak-to-peak height / body length',
  undulationDividedBody: 'Undulation of the {word} divided by body length (fingertip to toe in streamline).',
  sameMadeFair: 'The same, made fair between tall and short swimmers and between clips without a scale.',
  howFarYourMoveUp: 'How far your {word} move up and down, counted in body lengths.',
  bodyLengthVon: '{source}; body length as in von Loebbecke et al. 2009',
  sandersCappaertDevlin1995:
    'Sanders, Cappaert, Devlin 1995, J Biomech 28:9–16; least squares at known frequency, on the true sample times',
  harmonic: 'Harmonic {k} of the {word}',
  halfPeakPeak: 'half of peak-to-peak',
  amplitudeCHalf:
    'Amplitude C{k} (half of peak-to-peak) of the {which} harmonic of the height of the {word}; the first goes once a cycle: a stroke where hand entries are marked, else a kick.',
  partMovementGoes:
    '{k, plural, one {The part of the {theirs} movement that goes once a cycle.} other {The part of the {theirs} movement that goes {k} times a cycle.}}',
  oneWavesMake: 'One of the waves that make up how your {word} moves.',
  oneWavesMakeUp: 'One of the waves that make up how your {word} move.',
  phase: 'Phase {k} of the {word}',
  whereItsCrest: 'where its crest falls',
  phaseHarmonicHeight:
    'Phase φ{k} of the {which} harmonic of the height of the {word}, degrees of that harmonic after the hand entry where strokes are marked, else after the top of the kick, in −180 to 180.',
  whenCycleWave:
    'When in the cycle this wave of the {word} crests; compared along the body it shows the wave travelling.',
  whenYourAtCrest: 'When your {word} is at the crest of this wave.',
  whenYourAtCrestWave: 'When your {word} are at the crest of this wave.',
  powerShare: 'Power share {k} of the {word}',
  cSumC: 'C² / sum of C²',
  shareHarmonicSummed:
    'Share of the {which} harmonic in the summed squares of the harmonics fitted (up to three) to the height of the {word}.',
  whetherFollowsStroke: 'Whether the {word} follows the stroke, the kick, or something else.',
  whetherFollowStroke: 'Whether the {word} follow the stroke, the kick, or something else.',
  howMuchYourMovement: 'How much of your {theirs} movement is this wave.',
});
