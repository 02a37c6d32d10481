import { clockWords } from './clock-words';
import type { Drill } from './drill-schema';
import type { PracticeItem } from './practice-schema';
import { patternPhrase } from './stroke-pattern';
import type { Work } from './work';

const strokeWords: Readonly<Record<Work['stroke'], string>> = {
  butterfly: 'butterfly',
  'dolphin-kick': 'dolphin kick',
  other: 'other stroke',
};
const sideWords: Readonly<Record<Work['sideUp'], string>> = {
  front: 'on the front',
  back: 'on the back',
  'left-side': 'left side up',
  'right-side': 'right side up',
};
const armWords: Readonly<Record<Work['arms'], string>> = {
  stroking: '',
  stretched: 'arms stretched',
  overlapped: 'hands overlapped',
  folded: 'arms folded',
  'at-sides': 'arms at the sides',
  sculling: 'hands sculling',
  'one-arm-left': 'left arm only',
  'one-arm-right': 'right arm only',
  'one-arm-alternating': 'one arm at a time',
};

/** What is swum, in one line: "dolphin kick on the back, arms folded, with fins". `drillName` stands for the stroke. */
export function workPhrase(work: Work, drillName: string | null): string {
  const named = drillName ?? (work.drill || strokeWords[work.stroke]);
  const parts = [drillName ? named : `${named} ${sideWords[work.sideUp]}`];
  if (!drillName && armWords[work.arms]) parts.push(armWords[work.arms]);
  if (work.aids.length > 0) parts.push(`with ${work.aids.map((aid) => aid.replace('-', ' ')).join(' and ')}`);
  return parts.join(', ');
}

/** An item as on a practice card: "6 × 25 butterfly on the front · 2 right, 2 left, 4 both · 8 strokes · every 1:00". */
export function itemPhrase(item: PracticeItem, drill: Drill | null): string {
  const work = { ...item, drill: item.words.trim() };
  const parts = [`${item.repeats} × ${extent(item)} ${workPhrase(work, drill?.name ?? null)}`];
  if (item.pattern) parts.push(patternPhrase(item.pattern.runs));
  if (item.targetCount !== null) parts.push(`${item.targetCount} strokes`);
  if (item.ladder?.of === 'count')
    parts.push(`strokes ${item.ladder.rungs.map((n) => (n < 0 ? `${n}` : `+${n}`)).join(', ')}`);
  if (item.breathingEvery !== null)
    parts.push(
      item.breathingEvery === 1 ? 'a breath every stroke' : `a breath every ${item.breathingEvery} strokes`,
    );
  if (item.effort) parts.push(item.effort === 'full' ? 'full effort' : item.effort);
  if (item.kickBetween) parts.push(`${item.kickBetween.metres} kick between`);
  if (item.pause)
    parts.push(`${item.pause.kind === 'rest' ? 'rest' : 'every'} ${clockWords(item.pause.seconds)}`);
  return parts.join(' · ');
}

function extent(item: PracticeItem): string {
  const { ladder } = item;
  if (ladder?.of === 'lengths') return `(${ladder.rungs.map((n) => n * ladder.stepMetres).join(', ')})`;
  if (ladder?.of === 'pattern') return `(${ladder.rungs.join('-')} right, left, both) ${item.distanceMetres}`;
  return `${item.distanceMetres}`;
}
