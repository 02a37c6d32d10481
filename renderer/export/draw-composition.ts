import type { Composition } from '#core/drawing/composition';
import { paint } from '#core/drawing/paint';
import type { FramePicture, FrameSource } from '../video/frame-source';

export interface DrawingAsk {
  /** Pixels per unit of the composition. */
  readonly scale: number;
  /** Family of the letters; left out: the system's. */
  readonly family?: string;
  /** One source for each swim of the composition; null where its film is not here. */
  readonly sources: readonly (FrameSource | null)[];
  readonly signal: AbortSignal;
}

/** Times a picture is asked for again when the stage asked for another meanwhile; our default. */
const mostTries = 5;

/** A picture of a film, although the stage may ask the same source for another one meanwhile. */
export async function pictureOf(
  source: FrameSource,
  frame: number,
  signal: AbortSignal,
): Promise<FramePicture> {
  for (let tries = 1; ; tries++) {
    signal.throwIfAborted();
    try {
      return await source.show(frame, 0);
    } catch (problem) {
      const overtaken = problem instanceof DOMException && problem.name === 'AbortError';
      if (!overtaken || tries >= mostTries) throw problem;
    }
  }
}

/**
 * Draws a composition on a canvas, which is made as large as it needs. Rejects with an AbortError when the signal says
 * stop, and with the source's own error when a picture can't be decoded.
 */
export async function drawComposition(
  canvas: HTMLCanvasElement,
  composition: Composition,
  { scale, family, sources, signal }: DrawingAsk,
): Promise<void> {
  // drawn apart and shown whole, so that an older drawing stays until the new one is ready
  const sheet = document.createElement('canvas');
  sheet.width = Math.round(composition.width * scale);
  sheet.height = Math.round(composition.height * scale);
  const paper = sheet.getContext('2d', { alpha: false });
  if (!paper) throw new Error('a canvas has a 2D context');
  paper.scale(scale, scale);
  paper.fillStyle = composition.ground;
  paper.fillRect(0, 0, composition.width, composition.height);
  paper.imageSmoothingQuality = 'high';
  for (const { swim, frame, crop, at } of composition.pictures) {
    const source = sources[swim];
    if (!source) {
      paper.fillStyle = '#d5dde1';
      paper.fillRect(at.x, at.y, at.width, at.height);
      continue;
    }
    const picture = await pictureOf(source, frame, signal);
    const across = at.width / crop.width;
    const down = at.height / crop.height;
    paper.save();
    paper.beginPath();
    paper.rect(at.x, at.y, at.width, at.height);
    paper.clip();
    picture.draw(
      paper,
      at.x - crop.x * across,
      at.y - crop.y * down,
      picture.width * across,
      picture.height * down,
    );
    paper.restore();
  }
  signal.throwIfAborted();
  if (family !== undefined) paper.fontKerning = 'none';
  paint(paper, composition.over, family);
  canvas.width = sheet.width;
  canvas.height = sheet.height;
  canvas.getContext('2d', { alpha: false })?.drawImage(sheet, 0, 0);
}

/** A canvas as a file; null when it is too large for this machine. */
export function canvasBlob(
  canvas: HTMLCanvasElement,
  type: 'image/png' | 'image/jpeg',
  quality?: number,
): Promise<Blob | null> {
  return new Promise((resolve) => canvas.toBlob(resolve, type, quality));
}
