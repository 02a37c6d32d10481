import { words } from './words';

/** Definitions of the readings made of others. */
export const propulsionReadingsWords = words({
  distancePerKick: 'Distance per kick',
  speedKickFrequency: 'speed ÷ kick frequency',
  meanSpeedTimes:
    'Mean speed times the time of one whole kick; speed between distance marks where there are two, else of the trace.',
  howFarOneKick: 'How far one kick carries the swimmer. Compare with and without fins apart.',
  howFarOneKickCarries: 'How far one kick carries you.',
  dUFZamparoEt: 'd = U / f: Zamparo et al. 2002, J Exp Biol 205:2665–2676.',
  strouhalNumber: 'Strouhal number',
  kickFrequencyAmplitude: 'kick frequency × amplitude ÷ speed',
  kickFrequencyTimes:
    'Kick frequency times peak-to-peak amplitude of the toes over mean speed. A pure number: with a trace speed the scale cancels.',
  howMuchKicking:
    'How much kicking goes into the speed: the same speed with a smaller number takes less kick, by depth or by rate.',
  howMuchKickYou: 'How much kick you spend on your speed.',
  wDrzykNosiadek: 'Wądrzyk, Nosiadek, Staszkiewicz 2017, Human Movement 18(4).',
  froudeEfficiency: 'Froude efficiency',
  waveSpeedSpeed: '(wave speed + speed) ÷ (2 × wave speed)',
  shareKicksUseful:
    'Share of the kick’s useful power by slender-body theory, from body-wave speed c along travel and mean speed U: (c + U) / 2c. Needs U ≤ c; between 0.5 and 1.',
  howWellBodyWave:
    'How well the body wave turns into forward motion: nearer to 1, less of it goes into the wake.',
  howMuchYourWave: 'How much of your wave pushes you forward.',
  zamparoEtAl2002: 'Zamparo et al. 2002, J Exp Biol 205:2665–2676.',
  strokeLength: 'Stroke length',
  speedTimeOne: 'speed × time of one stroke',
  distanceOneStroke:
    'Distance of one stroke: mean speed times the common period of the strokes. Clean swimming only: distance marks before the breakout do not count.',
  howFarOneStroke: 'How far one stroke carries the swimmer; read it with the stroke rate.',
  howFarOneStrokeCarries: 'How far one stroke carries you.',
  slUTCommonDefinition: 'SL = U · T; common definition.',
  strokeIndex: 'Stroke index',
  speedStrokeLength: 'speed × stroke length',
  meanSpeedTimesStroke: 'Mean speed times stroke length. Compare swims of one swimmer at one pace.',
  speedLengthStroke:
    'Speed and length of the stroke in one number: it grows when either does without the other falling.',
  whetherYouGo: 'Whether you go fast and long at once.',
  siUSlCommonDefinition: 'SI = U · SL; common definition.',
});
