import { clockWords } from './clock-words';
import type { Drill } from './drill-schema';
import type { PracticeItem } from './practice-schema';
import { patternPhrase } from './stroke-pattern';
import type { Work } from './work';
import { practiceWords } from '../words/practice';

const strokeWords: Readonly<Record<Work['stroke'], string>> = {
  butterfly: practiceWords('butterfly'),
  'dolphin-kick': practiceWords('dolphinKick'),
  other: practiceWords('otherStroke'),
};
const sideWords: Readonly<Record<Work['sideUp'], string>> = {
  front: practiceWords('front'),
  back: practiceWords('back'),
  'left-side': practiceWords('leftSideUp'),
  'right-side': practiceWords('rightSideUp'),
};
const armWords: Readonly<Record<Work['arms'], string>> = {
  stroking: '',
  stretched: practiceWords('armsStretched'),
  overlapped: practiceWords('handsOverlapped'),
  folded: practiceWords('armsFolded'),
  'at-sides': practiceWords('armsAtSides'),
  sculling: practiceWords('handsSculling'),
  'one-arm-left': practiceWords('leftArmOnly'),
  'one-arm-right': practiceWords('rightArmOnly'),
  'one-arm-alternating': practiceWords('oneArmAtTime'),
};

/** What is swum, in one line: "dolphin kick on the back, arms folded, with fins". `drillName` stands for the stroke. */
export function workPhrase(work: Work, drillName: string | null): string {
  const named = drillName ?? (work.drill || strokeWords[work.stroke]);
  const parts = [drillName ? named : `${named} ${sideWords[work.sideUp]}`];
  if (!drillName && armWords[work.arms]) parts.push(armWords[work.arms]);
  if (work.aids.length > 0)
    parts.push(
      practiceWords('with', {
        aids: work.aids.map((aid) => aid.replace('-', ' ')).join(` ${practiceWords('and')} `),
      }),
    );
  return parts.join(', ');
}

/** An item as on a practice card: "6 × 25 butterfly on the front · 2 right, 2 left, 4 both · 8 strokes · every 1:00". */
export function itemPhrase(item: PracticeItem, drill: Drill | null): string {
  const work = { ...item, drill: item.words.trim() };
  const parts = [`${item.repeats} × ${extent(item)} ${workPhrase(work, drill?.name ?? null)}`];
  if (item.pattern) parts.push(patternPhrase(item.pattern.runs));
  if (item.targetCount !== null) parts.push(practiceWords('strokes', { targetCount: item.targetCount }));
  if (item.ladder?.of === 'count')
    parts.push(
      practiceWords('strokesRungs', {
        rungs: item.ladder.rungs.map((n) => (n < 0 ? `${n}` : `+${n}`)).join(', '),
      }),
    );
  if (item.breathingEvery !== null)
    parts.push(practiceWords('breathEveryStrokes', { breathingEvery: item.breathingEvery }));
  if (item.effort) parts.push(item.effort === 'full' ? practiceWords('fullEffort') : item.effort);
  if (item.kickBetween) parts.push(practiceWords('kickBetween', { metres: item.kickBetween.metres }));
  if (item.pause)
    parts.push(
      `${item.pause.kind === 'rest' ? practiceWords('rest') : practiceWords('every')} ${clockWords(item.pause.seconds)}`,
    );
  return parts.join(' · ');
}

function extent(item: PracticeItem): string {
  const { ladder } = item;
  if (ladder?.of === 'lengths') return `(${ladder.rungs.map((n) => n * ladder.stepMetres).join(', ')})`;
  if (ladder?.of === 'pattern')
    return practiceWords('rightLeftBoth', {
      rungs: ladder.rungs.join('-'),
      distanceMetres: item.distanceMetres,
    });
  return `${item.distanceMetres}`;
}
