import { measureOn, paint } from '#core/drawing/paint';
import { type StillContent, stillOps } from '#core/drawing/still-ops';
import type { PictureView } from '#core/drawing/picture-view';
import type { FramePicture } from '../video/frame-source';

/** Draws a still at the picture's own size: what of the film is shown, body line, angles and words. */
export function drawStill(
  paper: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  picture: FramePicture,
  { crop, at }: PictureView,
  marks: Parameters<typeof stillOps>[1],
  content: StillContent,
): void {
  const scale = at.width / crop.width;
  const { width, height } = picture;
  picture.draw(paper, at.x - crop.x * scale, at.y - crop.y * scale, width * scale, height * scale);
  paint(paper, stillOps(picture, marks, content, measureOn(paper)));
}
