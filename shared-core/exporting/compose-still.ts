import { type Composition, placePoint, type Rect } from '../drawing/composition';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { movedOp } from '../drawing/moved-op';
import { type PictureView, pictureView } from '../drawing/picture-view';
import { movedPosture, type ShownLine } from '../drawing/shown-line';
import { stillOps } from '../drawing/still-ops';
import { guessedHeight } from '../drawing/swimmer-size';
import { swimmerWindows } from '../drawing/swimmer-windows';
import type { Swim } from '../swim-file/swim-schema';
import type { ExportSource, NamedReading } from './export-source';
import { stillContent } from './still-content';

/**
 * What of a frame's picture a still shows in a slot of the page: all of it, or close to the swimmer as the stage does, never
 * closer than the whole swimmer with a margin.
 */
export const stillView = (swim: Swim, frame: number, slot: Rect, keepInView: boolean): PictureView =>
  pictureView(keepInView ? swimmerWindows(swim).windowOn(frame) : null, swim.clip, slot);

/** A frame of one swim as an annotated still, at the picture's own size; close to the swimmer where that is wanted. */
export function composeStill(
  source: ExportSource,
  frame: number,
  chosen: readonly NamedReading[],
  measure: MeasureWords,
  keepInView = false,
): Composition {
  const { swim, clock } = source;
  const { width, height } = swim.clip;
  const slot = { x: 0, y: 0, width, height };
  const view = stillView(swim, frame, slot, keepInView);
  const content = stillContent(swim, clock, frame, chosen);
  const marks = stillMarks(swim, source.lines.get(frame) ?? null, view);
  return {
    width,
    height,
    ground: '#000000',
    pictures: [{ swim: 0, frame, ...view }],
    over: stillOps(slot, marks, content, measure),
  };
}

/** A frame's line where the still shows it, and how tall the swimmer is there. */
export function stillMarks(swim: Swim, posture: ShownLine | null, view: PictureView) {
  const tall = guessedHeight(swim);
  return {
    swim,
    posture,
    drawn: posture && movedPosture(posture, (point) => placePoint(view, point)),
    height: tall && (tall * view.at.width) / view.crop.width,
  };
}

/** One side of a still of two swims. */
export interface StillSide {
  readonly source: ExportSource;
  readonly frame: number;
  readonly chosen: readonly NamedReading[];
}

/** Between the two pictures, beside their common height. */
const gapShare = 0.012;

/**
 * Two swims side by side, each on its own frame (the locked ones of a pair): both at the height of the taller picture,
 * each with its own line and words.
 */
export function composePairStill(
  sides: readonly [StillSide, StillSide],
  measure: MeasureWords,
  keepInView = false,
): Composition {
  const height = Math.max(...sides.map(({ source }) => source.swim.clip.height));
  const gap = Math.round(height * gapShare);
  let x = 0;
  const parts = sides.map(({ source, frame, chosen }, swim) => {
    const { clip } = source.swim;
    const scale = height / clip.height;
    const at = { x, y: 0, width: Math.round(clip.width * scale), height };
    x += at.width + gap;
    const own = stillView(source.swim, frame, { ...at, x: 0 }, keepInView);
    const ops = stillOps(
      at,
      stillMarks(source.swim, source.lines.get(frame) ?? null, own),
      stillContent(source.swim, source.clock, frame, chosen),
      measure,
    ).map((op): DrawingOp => movedOp(op, at.x, 0));
    const placed = { crop: own.crop, at: { ...own.at, x: own.at.x + at.x } };
    return { picture: { swim, frame, ...placed }, ops };
  });
  return {
    width: x - gap,
    height,
    ground: '#ffffff',
    pictures: parts.map(({ picture }) => picture),
    over: parts.flatMap(({ ops }) => ops),
  };
}
