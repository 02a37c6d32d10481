import { measureOn, paint } from '#core/drawing/paint';
import { type StillContent, stillOps } from '#core/drawing/still-ops';
import type { ShownLine } from '#core/drawing/shown-line';
import type { Swim } from '#core/swim-file/swim-schema';
import type { FramePicture } from '../video/frame-source';

/** Draws a still at the picture's own size: film, body line, angles and words. */
export function drawStill(
  paper: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  picture: FramePicture,
  marks: { readonly posture: ShownLine | null; readonly swim: Pick<Swim, 'scene' | 'card'> },
  content: StillContent,
): void {
  picture.draw(paper, 0, 0, picture.width, picture.height);
  paint(paper, stillOps(picture, marks, content, measureOn(paper)));
}
