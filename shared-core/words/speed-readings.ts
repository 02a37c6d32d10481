import { words } from './words';

/** Definitions of the readings of speed along the body. */
export const speedReadingsWords = words({
  commonPracticeNo: 'Common practice, no source',
  peakFootSpeed: 'Peak foot speed, down',
  fastestDownwardSpeed: 'fastest downward speed of the toes',
  fastestDownwardSpeedToes:
    'Fastest downward speed of the toes in a cycle, square to travel, from the waves fitted to their height; mean over cycles. Down is down in the picture, also on the back.',
  howHardFeetGo: 'How hard the feet go down.',
  howFastYourFeet: 'How fast your feet go down.',
  peakFootSpeedUp: 'Peak foot speed, up',
  fastestUpwardSpeed: 'fastest upward speed of the toes',
  fastestUpwardSpeedToes: 'Fastest upward speed of the toes in a cycle, square to travel; mean over cycles.',
  howHardFeetCome: 'How hard the feet come up: the half of the kick that is easily left out.',
  howFastYourFeetCome: 'How fast your feet come up.',
  footSpeedDown: 'Foot speed, down over up',
  peakDownPeak: 'peak down / peak up',
  peakDownwardOver: 'Peak downward over peak upward speed of the toes.',
  whetherKickWorks: 'Whether the kick works both ways or mostly down.',
  whetherYouKick: 'Whether you kick down harder than up.',
  downKickOver: 'Down-kick over swimming speed',
  peakFootSpeedDown: 'peak foot speed down / speed',
  peakDownwardSpeed: 'Peak downward speed of the toes over the swimmer’s mean speed.',
  below1FeetGo:
    'Below 1 the feet go down slower than the swimmer goes forward: the kick is not accelerating through.',
  whetherYourFeet: 'Whether your feet kick down faster than you swim.',
  speedHips: 'Speed of the hips',
  alongTravelWhole: 'along travel, whole cycles',
  slopeHipsWay:
    'Slope of the hips’ way along travel over whole cycles, the surge within cycles fitted beside it. Camera fixed, or its movement taken out. The hip is not the centre of mass: within a cycle it swings more.',
  howFastSwimmer: 'How fast the swimmer went, on average over whole cycles.',
  howFastYouWent: 'How fast you went.',
  slopeOverWhole: 'Slope over whole cycles; hip against centre of mass in butterfly: Barbosa and others',
  speedCentreMass: 'Speed of the centre of mass',
  sameWholeBody:
    'The same for the whole-body centre of mass, from postures with all nine landmarks. Head taken at the ear, foot on the ankle–toe line.',
  howFastWhole: 'How fast the whole body went, on average over whole cycles.',
  howFastYourWhole: 'How fast your whole body went.',
  deLeva1996JBiomech: 'de Leva 1996, J Biomech 29:1223–1230, Table 4 (young adults)',
  speedVariationWithin: 'Speed variation within the cycle',
  n100SdSpeedMean: '100 · SD of speed / mean speed',
  standardDeviationFitted:
    'Standard deviation of the fitted speed over the mean cycle, in % of mean speed; centre of mass where all landmarks are marked, else the hips.',
  howEvenlySwimmer: 'How evenly the swimmer moves; each slow spot has to be paid for by speeding up again.',
  howEvenYourSpeed: 'How even your speed is: smaller means smoother.',
  intraCycleVelocity: 'Intra-cycle velocity variation as used by the Barbosa group',
  lowestSpeedCycle: 'Lowest speed in the cycle',
  slowestInstant: 'slowest instant',
  lowestValueFitted: 'Lowest value of the fitted speed over the mean cycle.',
  howSlowSlowest: 'How slow the slowest instant is; look at the frame it falls on.',
  yourSlowestMoment: 'Your slowest moment in each cycle.',
  ourOwnDefinition: 'Our own definition',
  highestSpeedCycle: 'Highest speed in the cycle',
  fastestInstant: 'fastest instant',
  highestValueFitted: 'Highest value of the fitted speed over the mean cycle.',
  howFastFastest: 'How fast the fastest instant is; look at the frame it falls on.',
  yourFastestMoment: 'Your fastest moment in each cycle.',
  underwaterPartRead: 'Underwater part, read off the picture',
  toesAtPushOff: 'toes at push-off → head at breakout',
  distanceAlongTravel:
    'Distance along travel from the toes on the frame of the push-off to the ear on the frame of the breakout, by the scene’s scale; camera fixed or its movement taken out, both in the picture.',
  whereHeadBroke:
    'Where the head broke the surface. The rule is 15 m; the interval says how sure the picture is.',
  whereYouCame: 'Where you came up.',
  worldAquaticsSwimming:
    'World Aquatics swimming rules (SW): head must surface by 15 m in butterfly and backstroke',
  underwaterSpeedRead: 'Underwater speed, read off the picture',
  toesAtPushOffHead: 'toes at push-off → head at breakout, over the time',
  distanceAlongTravelFrom:
    'Distance along travel from the toes at the push-off to the ear at the breakout, by the scene’s scale, divided by the time between the two; camera fixed or its movement taken out, both in the picture. The stretch from toes to ear is in it.',
  meanSpeedUnderwater: 'Mean speed of the underwater part where no distance marks tell it.',
  howFastYouWere: 'How fast you were under water.',
});
