import { drillById } from '#core/practice/drill-library';
import {
  type LogEntry,
  type Practice,
  type PracticeItem,
  practiceFileVersion,
} from '#core/practice/practice-schema';
import { type Trial, trialFileVersion } from '#core/practice/trial-schema';
import { unfoldItem } from '#core/practice/unfold-item';
import { noTags } from '#core/swim-file/condition-tags';
import { normal, seeded } from './model/seeded';

type Item = Partial<PracticeItem> & { readonly drill?: string };

const squad = ['pip', 'juno', 'ansel'] as const;
type Name = (typeof squad)[number];

/** Strokes a slow 25 and seconds a steady 25 of the invented swimmers: made up, nobody's measurements. */
const usual: Readonly<Record<Name, { readonly count: number; readonly seconds: number }>> = {
  pip: { count: 10, seconds: 20.4 },
  juno: { count: 9, seconds: 18.6 },
  ansel: { count: 8, seconds: 17.1 },
};

const warmUp: Item = {
  repeats: 4,
  distanceMetres: 50,
  stroke: 'other',
  effort: 'easy',
  pause: { kind: 'rest', seconds: 15 },
};
const bareKick: PracticeItem['kickBetween'] = { metres: 25, aids: [], arms: 'stretched', sideUp: 'front' };
const slow: Item = { repeats: 4, effort: 'steady', targetCount: 9, pause: { kind: 'send-off', seconds: 60 } };
const full: Item = { repeats: 2, effort: 'full', targetCount: 9, pause: { kind: 'send-off', seconds: 90 } };
const underwater: Item = {
  drill: 'streamline-kick-strokes-at-ends',
  repeats: 4,
  effort: 'strong',
  pause: { kind: 'rest', seconds: 45 },
};
const fins: Item = {
  stroke: 'dolphin-kick',
  arms: 'stretched',
  repeats: 6,
  aids: ['fins'],
  effort: 'steady',
  pause: { kind: 'rest', seconds: 20 },
};

interface Day {
  readonly date: string;
  readonly title: string;
  readonly note?: string;
  readonly items: readonly Item[];
  /** Sample films of that day: item, repeat, swimmer, swim. */
  readonly films?: readonly (readonly [item: number, repeat: number, swimmer: Name, swim: string])[];
}

const oneArm: Item = {
  drill: 'one-arm-two-two-four',
  repeats: 6,
  effort: 'steady',
  pause: { kind: 'send-off', seconds: 60 },
};
const threes: Item = { ...oneArm, drill: 'one-arm-three-three-three' };

/** A month of an invented squad: two or three practices a week, filmed now and then. */
const days: readonly Day[] = [
  {
    date: '2026-05-05',
    title: 'Find the count',
    note: 'First week: every swimmer’s own count, slowly.',
    items: [warmUp, oneArm, slow, full],
  },
  {
    date: '2026-05-07',
    title: 'Kick two with the hands out',
    items: [warmUp, { ...oneArm, kickBetween: bareKick }, slow, full],
    films: [[2, 1, 'pip', 'sample-butterfly-late-kick']],
  },
  {
    date: '2026-05-12',
    title: 'Long line',
    items: [
      warmUp,
      underwater,
      { drill: 'kick-front-folded', repeats: 4, aids: ['snorkel'], pause: { kind: 'rest', seconds: 20 } },
      { drill: 'kick-back-stretched', repeats: 4, pause: { kind: 'rest', seconds: 20 } },
      slow,
    ],
  },
  {
    date: '2026-05-14',
    title: 'Film day',
    note: 'Camera at the 12.5 m mark, side-on.',
    items: [warmUp, slow, underwater, fins, { ...fins, aids: [] }],
    films: [
      [1, 2, 'pip', 'sample-butterfly-together'],
      [2, 0, 'juno', 'sample-streamline-kick'],
      [3, 1, 'ansel', 'sample-fins-slow-motion'],
    ],
  },
  {
    date: '2026-05-19',
    title: 'Ladders',
    items: [
      warmUp,
      {
        repeats: 1,
        ladder: { of: 'lengths', rungs: [1, 2, 3], stepMetres: 25 },
        effort: 'steady',
        pause: { kind: 'rest', seconds: 30 },
      },
      {
        repeats: 1,
        ladder: { of: 'lengths', rungs: [3, 2, 1], stepMetres: 25 },
        effort: 'steady',
        pause: { kind: 'rest', seconds: 30 },
      },
      {
        repeats: 1,
        targetCount: 9,
        ladder: { of: 'count', rungs: [0, 2, 4] },
        effort: 'strong',
        pause: { kind: 'rest', seconds: 30 },
      },
    ],
  },
  {
    date: '2026-05-20',
    title: 'Easy kick, filmed from the phone',
    items: [warmUp, { ...fins, aids: [], effort: 'easy', repeats: 4 }, threes],
    films: [[1, 0, 'ansel', 'sample-phone-portrait']],
  },
  {
    date: '2026-05-21',
    title: 'Front, back and sides',
    items: [
      warmUp,
      {
        drill: 'kick-front-folded',
        repeats: 4,
        aids: ['snorkel'],
        effort: 'easy',
        pause: { kind: 'rest', seconds: 20 },
      },
      { drill: 'kick-back-stretched', repeats: 4, effort: 'steady', pause: { kind: 'rest', seconds: 20 } },
      { drill: 'kick-left-side', repeats: 2, pause: { kind: 'rest', seconds: 20 } },
      { drill: 'kick-right-side', repeats: 2, pause: { kind: 'rest', seconds: 20 } },
    ],
    films: [
      [1, 1, 'juno', 'sample-arms-folded'],
      [2, 0, 'pip', 'sample-kick-on-back'],
    ],
  },
  {
    date: '2026-05-26',
    title: 'Fins, and as much without',
    items: [warmUp, fins, { ...fins, aids: [] }, threes, slow, full],
  },
  {
    date: '2026-05-28',
    title: 'Does the count hold?',
    note: 'Equal push-offs, so that only the strokes decide.',
    items: [warmUp, oneArm, { ...slow, breathingEvery: 2 }, { ...full, breathingEvery: 2 }],
  },
];

const notes = [
  '',
  '',
  '',
  '',
  '',
  'breath late',
  'kick two lost at the end',
  'hips higher',
  'good rhythm',
] as const;

function itemOf(day: string, place: number, { drill: drillId, ...said }: Item): PracticeItem {
  const drill = drillId ? drillById(drillId, []) : null;
  return {
    id: `${day}-item-${place + 1}`,
    repeats: 4,
    distanceMetres: 25,
    stroke: drill?.stroke ?? 'butterfly',
    drillId: drill?.id ?? null,
    words: '',
    sideUp: drill?.sideUp ?? 'front',
    arms: drill?.arms ?? 'stroking',
    aids: [...(drill?.aids ?? [])],
    underwater: drill?.underwater ?? false,
    tags: noTags,
    kickBetween: null,
    pause: null,
    pattern: drill?.pattern ?? null,
    breathingEvery: null,
    targetCount: null,
    effort: null,
    ladder: null,
    swimmerIds: null,
    note: '',
    ...said,
  };
}

/** Butterfly repeats are counted and timed, under water and warm-up are not; a few are forgotten, as on deck. */
function logOf(day: Day, items: readonly PracticeItem[], weeks: number, random: () => number): LogEntry[] {
  const log: LogEntry[] = [];
  const films = new Map(day.films?.map(([item, repeat, who, swim]) => [`${item} ${repeat} ${who}`, swim]));
  for (const [place, item] of items.entries())
    for (const { repeat, distanceMetres } of unfoldItem(item))
      for (const swimmerId of squad) {
        const film = films.get(`${place} ${repeat} ${swimmerId}`) ?? null;
        if (film === null && random() < 0.08) continue;
        const lengths = distanceMetres / 25;
        const { count, seconds } = usual[swimmerId];
        const hard = item.effort === 'full';
        const counted = item.stroke === 'butterfly';
        const strokes = Math.round(
          lengths * (count + (hard ? 0.9 - 0.25 * weeks : 0)) + 0.5 * normal(random),
        );
        const swum = lengths * seconds * (hard ? 0.84 : 1) + 0.3 * normal(random);
        const note = notes[Math.floor(random() * notes.length)] ?? '';
        log.push({
          id: `${item.id}-${repeat + 1}-${swimmerId}`,
          itemId: item.id,
          repeat,
          swimmerId,
          count: counted ? strokes : null,
          timeSeconds: counted ? Number(swum.toFixed(1)) : null,
          effort: null,
          note: counted ? note : '',
          swimId: film,
        });
      }
  return log;
}

/** The practices of the month. */
export function samplePractices(): readonly Practice[] {
  return days.map((day, i) => {
    const items = day.items.map((item, place) => itemOf(day.date, place, item));
    return {
      format: 'submark-practice',
      version: practiceFileVersion,
      id: `sample-practice-${day.date}`,
      createdAt: `${day.date}T07:00:00.000Z`,
      changedAt: `${day.date}T18:30:00.000Z`,
      date: day.date,
      title: day.title,
      poolMetres: 25,
      swimmerIds: [...squad],
      pace: null,
      note: day.note ?? '',
      invented: true,
      items,
      log: logOf(day, items, Math.floor(i / 3), seeded(2026_05 + i)),
    };
  });
}

/** A trial over two of the sample swims: too few to settle anything, and it says so. */
export const sampleTrial: Trial = {
  format: 'submark-trial',
  version: trialFileVersion,
  id: 'sample-trial-late-kick',
  createdAt: '2026-05-15T08:00:00.000Z',
  changedAt: '2026-05-15T08:10:00.000Z',
  title: 'Does a late second kick cost Pip speed?',
  factor: { of: 'tag', tag: 'kick 2 late' },
  readings: [
    'speed-hip',
    'distance-per-kick',
    'kick2-bottom-to-exit',
    'speed-variation',
    'trunk-pitch',
    'head-offset',
    'hip-height',
  ],
  rows: [
    {
      swimId: 'sample-butterfly-late-kick',
      order: 0,
      tags: { ...noTags, free: ['kick 2 late'] },
    },
    { swimId: 'sample-butterfly-together', order: 1, tags: noTags },
  ],
  plan: null,
  note: 'Invented. One repeat of each settles nothing: the page says what is missing.',
  invented: true,
};
