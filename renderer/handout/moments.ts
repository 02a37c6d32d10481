import type { ExportSource } from '#core/exporting/export-source';
import { markPhrase } from '#core/marks/mark-words';
import { hasPoint } from '#core/swim-file/has-point';
import { realTimeOf } from '#core/timeline/clip-clock';
import { sentence } from '../card/sentence';
import { handoutWords } from '#core/words/handout';

/** A frame worth a picture. */
export interface Moment {
  readonly frame: number;
  /** "Hand entry", or "Body line" where no moment is marked. */
  readonly words: string;
  /** Real seconds, as printed. */
  readonly time: string;
}

/** How many moments without a mark of their own are offered: body lines the coach laid. Our choice. */
const mostLines = 12;

/**
 * Moments for the handout in order of time: every marked one, and the coach's own body lines apart from those. Frames that are
 * only followed are left out: there are as many as pictures, and the arrows step to them.
 */
export function handoutMoments({ swim, clock }: Pick<ExportSource, 'swim' | 'clock'>): readonly Moment[] {
  const seconds = (frame: number): string => `${realTimeOf(clock, frame).toFixed(2)} s`;
  const marked = new Map<number, string>();
  for (const mark of swim.events) {
    const before = marked.get(mark.frame);
    marked.set(mark.frame, before ? `${before}, ${markPhrase(mark)}` : markPhrase(mark));
  }
  const lines = swim.postures.filter((each) => hasPoint(each) && !marked.has(each.frame));
  const every = Math.max(1, Math.ceil(lines.length / mostLines));
  return [
    ...[...marked].map(([frame, words]) => ({ frame, words: sentence(words), time: seconds(frame) })),
    ...lines
      .filter((_, i) => i % every === 0)
      .map(({ frame }) => ({ frame, words: handoutWords('bodyLine'), time: seconds(frame) })),
  ].sort((a, b) => a.frame - b.frame);
}
