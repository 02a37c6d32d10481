import type { ShownLine } from './shown-line';
import type { Posture, Swim } from '../swim-file/swim-schema';
import { angleOps, bodyLineOps, casedWords, fittedWords } from './body-line-ops';
import { markShare } from './mark-size';
import type { DrawingOp, MeasureWords } from './drawing-op';
import { exportsWords } from '../words/exports';

/** Everything written on a still, in words; where it goes is decided here. */
export interface StillContent {
  readonly title: string;
  readonly facts: string;
  /** Names of the events on this frame; empty when there are none. */
  readonly event: string;
  readonly where: string;
  readonly readings: readonly { readonly label: string; readonly value: string }[];
  readonly invented: boolean;
}

/** Our default: letters are this share of the picture's shorter side, and never under 11 pixels. */
const letterShare = 0.026;
const leastLetters = 11;

/** Size of letters that suits a picture, pixels. */
export const letterSize = ({ width, height }: { readonly width: number; readonly height: number }): number =>
  Math.max(leastLetters, Math.round(Math.min(width, height) * letterShare));

/** A posture, and which of its points the machine followed, if any. */
type LineOrPosture = Posture & Partial<Pick<ShownLine, 'followed' | 'seen'>>;

/** What lies over a still's picture, at the picture's own size: body line, angles and words. */
export function stillOps(
  picture: { readonly width: number; readonly height: number },
  marks: {
    readonly posture: LineOrPosture | null;
    readonly swim: Pick<Swim, 'scene' | 'card'>;
    /** The posture where it is drawn, when the picture is not shown at its own size. */
    readonly drawn?: LineOrPosture | null;
    /** How tall the swimmer is on the still, pixels; null where that isn't known. */
    readonly height: number | null;
  },
  content: StillContent,
  measure: MeasureWords,
): readonly DrawingOp[] {
  const { width, height } = picture;
  const size = letterSize(picture);
  const edge = size * 1.1;
  const line = size * 1.45;
  const room = width - 2 * edge;
  const small = size * 0.9;
  const large = size * 1.15;
  const ops: DrawingOp[] = [];
  if (marks.posture) {
    const drawn = marks.drawn ?? marks.posture;
    ops.push(
      ...bodyLineOps(drawn, size * markShare(marks.height, size), drawn.followed, 'whole', drawn.seen),
      ...angleOps(marks.posture, marks.swim, small, measure, drawn, marks.height),
    );
  }
  const row = (words: string, y: number, letters: number, weight: 400 | 600): void => {
    ops.push(casedWords(fittedWords(words, room, letters, weight, measure), { x: edge, y }, letters, weight));
  };
  row(content.title, edge + size, large, 600);
  row(content.facts, edge + size + line, small, 400);
  const notes = [
    ...(content.invented ? [exportsWords('inventedSwimDemonstration2')] : []),
    ...((marks.posture?.seen?.length ?? 0) > 0 ? [exportsWords('seenPoints')] : []),
  ];
  for (const [i, words] of notes.entries()) row(words, edge + size + (2 + i) * line, small, 600);
  // readings end just above the foot line
  const foot = height - edge;
  row(content.event ? `${content.event} · ${content.where}` : content.where, foot, size, 600);
  const widest = Math.max(0, ...content.readings.map(({ label }) => measure(label, size, 400)));
  const labels = Math.min(room * 0.6, widest);
  content.readings.forEach(({ label, value }, index) => {
    const y = foot - line * (content.readings.length - index) - size * 0.3;
    ops.push(
      casedWords(fittedWords(label, labels + 1, size, 400, measure), { x: edge, y }, size, 400),
      casedWords(value, { x: edge + labels + size, y }, size, 600),
    );
  });
  return ops;
}
