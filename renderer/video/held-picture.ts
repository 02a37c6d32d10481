import { VideoSample } from 'mediabunny';
import { closeFrame, opened } from './frame-ledger';
import type { ClipFacts, FramePicture, PicturePart } from './frame-source';
import { colourPlanes, coloursByDrawing, coloursOfPlanes } from './colour-part';

/** How a decoded picture has to be turned to be shown. */
export interface Turning {
  readonly rotation: ClipFacts['rotation'];
  readonly flip: boolean;
}

/** A picture copied out of the decoder, so that the decoder's own small pool is never held up. */
export interface HeldPicture extends FramePicture {
  readonly bytes: number;
  /** Gives back what the copy holds outside plain memory. */
  release(): void;
}

/**
 * Copies a decoder's picture; the picture itself is closed whatever happens. Planes in plain memory are the cheapest
 * thing to hold (3 MB for 1080p where a bitmap takes 8). Pictures whose planes can't be read, as some hardware
 * decoders give, are held as bitmaps.
 */
export async function holdPicture(
  decoded: VideoFrame,
  frame: number,
  shown: { readonly width: number; readonly height: number },
  turning: Turning,
): Promise<HeldPicture> {
  try {
    if (decoded.format === null) return await asBitmap(decoded, frame, shown, turning);
    const planes = new Uint8Array(decoded.allocationSize());
    const layout = await decoded.copyTo(planes);
    const init: VideoFrameBufferInit = {
      format: decoded.format,
      codedWidth: decoded.visibleRect?.width ?? decoded.codedWidth,
      codedHeight: decoded.visibleRect?.height ?? decoded.codedHeight,
      timestamp: 0,
      layout,
      colorSpace: decoded.colorSpace.toJSON(),
    };
    const draw: FramePicture['draw'] = (...place) => {
      drawTurned(opened(new VideoFrame(planes, init)), turning, ...place);
    };
    const upright =
      turning.rotation === 0 &&
      !turning.flip &&
      init.codedWidth === shown.width &&
      init.codedHeight === shown.height;
    const planesOf = upright ? colourPlanes(init.format, planes, layout) : null;
    return {
      frame,
      ...shown,
      bytes: planes.byteLength,
      draw,
      colours: (part: PicturePart) =>
        planesOf ? coloursOfPlanes(planesOf, part) : coloursByDrawing(draw, shown, part),
      release: () => undefined,
    };
  } finally {
    closeFrame(decoded);
  }
}

async function asBitmap(
  decoded: VideoFrame,
  frame: number,
  shown: { readonly width: number; readonly height: number },
  turning: Turning,
): Promise<HeldPicture> {
  const bitmap = await createImageBitmap(decoded);
  const bytes = bitmap.width * bitmap.height * 4;
  const draw: FramePicture['draw'] = (...place) => {
    drawTurned(opened(new VideoFrame(bitmap, { timestamp: 0 })), turning, ...place);
  };
  return {
    frame,
    ...shown,
    bytes,
    draw,
    colours: (part) => coloursByDrawing(draw, shown, part),
    release: () => bitmap.close(),
  };
}

/** Draws a picture and closes it. */
function drawTurned(
  picture: VideoFrame,
  { rotation, flip }: Turning,
  ...[context, x, y, width, height]: Parameters<FramePicture['draw']>
): void {
  // closes the picture as it leaves
  const sample = new VideoSample(picture, { rotation, flip, timestamp: 0 });
  try {
    sample.draw(context, x, y, width, height);
  } finally {
    sample.close();
    closeFrame(picture);
  }
}
