import type { Point } from '#core/units/point';

/** How the picture lies on the stage: stage = picture · scale + offset, in CSS pixels. */
export interface StageView {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Our default: at 24 a picture pixel is larger than a fingertip mark; more helps nobody. */
const largestScale = 24;

/** The whole picture, centred, as large as the stage allows. */
export function fitView(picture: Size, stage: Size): StageView {
  const scale = Math.max(1e-6, Math.min(stage.width / picture.width, stage.height / picture.height));
  return {
    scale,
    x: (stage.width - picture.width * scale) / 2,
    y: (stage.height - picture.height * scale) / 2,
  };
}

export function toStage(view: StageView, point: { readonly x: number; readonly y: number }): Point {
  return { x: point.x * view.scale + view.x, y: point.y * view.scale + view.y };
}

export function toPicture(view: StageView, point: { readonly x: number; readonly y: number }): Point {
  return { x: (point.x - view.x) / view.scale, y: (point.y - view.y) / view.scale };
}

/** Keeps at least a third of the stage filled with picture, so that the coach can't lose it. */
function held(view: StageView, picture: Size, stage: Size): StageView {
  const keep = (offset: number, pictureLength: number, stageLength: number): number => {
    if (pictureLength <= stageLength) return (stageLength - pictureLength) / 2;
    const slack = stageLength / 3;
    return Math.min(slack, Math.max(stageLength - pictureLength - slack, offset));
  };
  return {
    scale: view.scale,
    x: keep(view.x, picture.width * view.scale, stage.width),
    y: keep(view.y, picture.height * view.scale, stage.height),
  };
}

/**
 * Zooms by a factor so that the picture under `at` stays under it; never smaller than `home` (then null), which is the
 * fitted picture unless told otherwise.
 */
export function zoomAt(
  view: StageView,
  at: Point,
  factor: number,
  picture: Size,
  stage: Size,
  home: StageView = fitView(picture, stage),
): StageView | null {
  const scale = Math.min(Math.max(largestScale, home.scale), view.scale * factor);
  if (scale <= home.scale * 1.001) return null;
  const under = toPicture(view, at);
  return held({ scale, x: at.x - under.x * scale, y: at.y - under.y * scale }, picture, stage);
}

export function panBy(view: StageView, dx: number, dy: number, picture: Size, stage: Size): StageView {
  return held({ scale: view.scale, x: view.x + dx, y: view.y + dy }, picture, stage);
}
