import { VideoSample } from 'mediabunny';
import { colourPlanes, coloursByDrawing, coloursOfPlanes } from './colour-part';
import { closeFrame, opened } from './frame-ledger';
import { isGone } from './is-gone';
import type { ClipFacts, FramePicture } from './frame-source';
import type { PicturePart } from './picture-part';
import { canHalve, halvePlanes } from './halve-planes';
import { smallGreyByDrawing, smallGreyOfPlanes } from './small-grey';

/** How a decoded picture has to be turned to be shown. */
interface Turning {
  readonly rotation: ClipFacts['rotation'];
  readonly flip: boolean;
}

/** A picture copied out of the decoder, so that the decoder's own small pool is never held up. */
export interface HeldPicture extends FramePicture {
  readonly bytes: number;
  readonly canHalve: boolean;
  /** Held beside a whole picture that takes long to draw: the same at half size, for while the coach moves. Its bytes count. */
  readonly light: HeldPicture | null;
  /** The same picture at half size, a quarter of the bytes; null where that can't be made exactly or it is one already. */
  halved(): HeldPicture | null;
  /** Gives back what the copy holds outside plain memory. */
  release(): void;
}

export interface Holding {
  readonly frame: number;
  readonly shown: { readonly width: number; readonly height: number };
  readonly turning: Turning;
  /** Only half size is wanted, where that can be made exactly. */
  readonly half: boolean;
  /** Half size will do while moving: a large picture is held both ways. */
  readonly moving: boolean;
}

/**
 * Pixels from which drawing a picture takes longer than a step may (a whole 4K picture: 37 ms, its half: 9, measured on two
 * cores without a graphics card).
 */
const largePixels = 3_000_000;
/** What a picture takes that is held both ways, in plain ones. */
export const lightShare = 1.25;
const isLarge = (width: number, height: number): boolean => width * height > largePixels;
/** What a picture takes as it is usually decoded: planes with colours that four pixels share. */
export const usualBytes = (width: number, height: number): number =>
  width * height * 1.5 * (isLarge(width, height) ? lightShare : 1);

/**
 * Copies a decoder's picture; the picture itself is closed whatever happens. Planes in plain memory are the cheapest
 * thing to hold (3 MB for 1080p where a bitmap takes 8). Pictures whose planes can't be read, as some hardware
 * decoders give, are held as bitmaps.
 */
export async function holdPicture(decoded: VideoFrame, holding: Holding): Promise<HeldPicture> {
  try {
    const { format, visibleRect } = decoded;
    if (format === null) return await asBitmap(decoded, holding);
    const width = visibleRect?.width ?? decoded.codedWidth;
    const height = visibleRect?.height ?? decoded.codedHeight;
    const colorSpace = decoded.colorSpace.toJSON();
    const size = decoded.allocationSize();
    const half = holding.half && canHalve(format, width, height);
    const bytes = half ? takeScratch(size) : new Uint8Array(size);
    try {
      const layout = await decoded.copyTo(bytes);
      const planes: Planes = half
        ? { ...halvePlanes(format, bytes, layout, width, height), format, colorSpace, whole: false }
        : { bytes, layout, width, height, format, colorSpace, whole: true };
      return ofPlanes(planes, holding, holding.moving && isLarge(width, height));
    } finally {
      if (half) giveScratch(bytes);
    }
  } finally {
    closeFrame(decoded);
  }
}

interface Planes {
  readonly bytes: Uint8Array;
  readonly layout: readonly PlaneLayout[];
  readonly width: number;
  readonly height: number;
  readonly format: VideoPixelFormat;
  readonly colorSpace: VideoColorSpaceInit;
  readonly whole: boolean;
}

function ofPlanes(planes: Planes, holding: Holding, withLight = false): HeldPicture {
  const { bytes, layout, width, height, format, colorSpace, whole } = planes;
  const { frame, shown, turning } = holding;
  const init: VideoFrameBufferInit = {
    format,
    codedWidth: width,
    codedHeight: height,
    timestamp: 0,
    layout: [...layout],
    colorSpace,
  };
  const draw: FramePicture['draw'] = (...place) => {
    drawTurned(opened(new VideoFrame(bytes, init)), turning, ...place);
  };
  const upright = turning.rotation === 0 && !turning.flip && width === shown.width && height === shown.height;
  const planesOf = upright ? colourPlanes(format, bytes, layout) : null;
  const halves = whole && canHalve(format, width, height);
  const makeHalf = (): HeldPicture => {
    const half = halvePlanes(format, bytes, layout, width, height);
    return ofPlanes({ ...half, format, colorSpace, whole: false }, holding);
  };
  const light = halves && withLight ? makeHalf() : null;
  return {
    frame,
    ...shown,
    whole,
    bytes: bytes.byteLength + (light?.bytes ?? 0),
    canHalve: halves,
    light,
    draw,
    colours: (part: PicturePart, step = 1) =>
      planesOf ? coloursOfPlanes(planesOf, part, step) : coloursByDrawing(draw, shown, part, step),
    smallGrey: (step) =>
      planesOf ? smallGreyOfPlanes(planesOf, shown, step) : smallGreyByDrawing(draw, shown, step),
    halved: () => light ?? (halves ? makeHalf() : null),
    release: () => undefined,
  };
}

async function asBitmap(decoded: VideoFrame, { frame, shown, turning }: Holding): Promise<HeldPicture> {
  const bitmap = await createImageBitmap(decoded);
  const bytes = bitmap.width * bitmap.height * 4;
  const draw: FramePicture['draw'] = (...place) => {
    if (!isGone(bitmap)) drawTurned(opened(new VideoFrame(bitmap, { timestamp: 0 })), turning, ...place);
  };
  return {
    frame,
    ...shown,
    whole: true,
    bytes,
    draw,
    colours: (part, step = 1) => coloursByDrawing(draw, shown, part, step),
    smallGrey: (step) => smallGreyByDrawing(draw, shown, step),
    canHalve: false,
    light: null,
    halved: () => null,
    release: () => bitmap.close(),
  };
}

/** Memory that whole pictures pass through on their way to half size: two hundred a second would be 600 MB of waste. */
const scratch: Uint8Array<ArrayBuffer>[] = [];
/** As many as are copied at one time, with some to spare for a second film. */
const scratchKept = 6;

function takeScratch(size: number): Uint8Array<ArrayBuffer> {
  const place = scratch.findIndex(({ byteLength }) => byteLength === size);
  return (place < 0 ? null : scratch.splice(place, 1)[0]) ?? new Uint8Array(size);
}

function giveScratch(bytes: Uint8Array<ArrayBuffer>): void {
  scratch.push(bytes);
  if (scratch.length > scratchKept) scratch.shift();
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
