import type { Composition } from '../drawing/composition';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { movedOp } from '../drawing/moved-op';
import { movedPosture } from '../drawing/shown-line';
import { stillOps } from '../drawing/still-ops';
import type { ExportSource, NamedReading } from './export-source';
import { stillContent } from './still-content';

/** A frame of one swim as an annotated still, at the picture's own size. */
export function composeStill(
  source: ExportSource,
  frame: number,
  chosen: readonly NamedReading[],
  measure: MeasureWords,
): Composition {
  const { swim, clock } = source;
  const { width, height } = swim.clip;
  const whole = { x: 0, y: 0, width, height };
  const content = stillContent(swim, clock, frame, chosen);
  const posture = source.lines.get(frame) ?? null;
  return {
    width,
    height,
    ground: '#000000',
    pictures: [{ swim: 0, frame, crop: whole, at: whole }],
    over: stillOps({ width, height }, { posture, swim }, content, measure),
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
export function composePairStill(sides: readonly [StillSide, StillSide], measure: MeasureWords): Composition {
  const height = Math.max(...sides.map(({ source }) => source.swim.clip.height));
  const gap = Math.round(height * gapShare);
  let x = 0;
  const parts = sides.map(({ source, frame, chosen }, swim) => {
    const { clip } = source.swim;
    const scale = height / clip.height;
    const at = { x, y: 0, width: Math.round(clip.width * scale), height };
    x += at.width + gap;
    const posture = source.lines.get(frame) ?? null;
    const drawn = posture && movedPosture(posture, (point) => ({ x: point.x * scale, y: point.y * scale }));
    const ops = stillOps(
      at,
      { posture, swim: source.swim, drawn },
      stillContent(source.swim, source.clock, frame, chosen),
      measure,
    ).map((op): DrawingOp => movedOp(op, at.x, 0));
    const crop = { x: 0, y: 0, width: clip.width, height: clip.height };
    return { picture: { swim, frame, crop, at }, ops };
  });
  return {
    width: x - gap,
    height,
    ground: '#ffffff',
    pictures: parts.map(({ picture }) => picture),
    over: parts.flatMap(({ ops }) => ops),
  };
}
