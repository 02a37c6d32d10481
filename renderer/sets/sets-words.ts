import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import { strokeWords } from '#core/swim-file/card-words';
import { setsWords } from '#core/words/sets';

/** What is swum, with the one choice a film has not. */
export const practiceStrokeWords: Readonly<Record<PracticeItem['stroke'], string>> = {
  ...strokeWords,
  other: setsWords('otherStroke'),
};

/** "450 m", tenths only when there are any. */
export function metresWords(metres: number): string {
  return `${Number(metres.toFixed(1)).toLocaleString()} m`;
}

/** "42 min"; seconds below two minutes. */
export function durationWords(seconds: number): string {
  return seconds < 120 ? `${Math.round(seconds)} s` : setsWords('min', { seconds: Math.round(seconds / 60) });
}

/** The practice's title, or its first work, as the coach knows it by. */
export function titleOf(practice: Practice): string {
  return practice.title.trim() || setsWords('practiceWithoutTitle');
}
