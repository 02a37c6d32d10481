import { type Canvas, createCanvas, ImageData } from '@napi-rs/canvas';
import type { Composition } from '#core/drawing/composition';
import type { MeasureWords } from '#core/drawing/drawing-op';
import { measureOn, paint } from '#core/drawing/paint';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Clip } from '#core/swim-file/swim-schema';
import { readPictures } from '../media/read-pictures';
import { hostFamily, knowLetters } from './letters';

/** A clip to take pictures from: its file, and its facts. */
export interface ClipOnDisk {
  readonly file: string;
  readonly clip: Clip;
}

/** How wide words are in the host's letters. */
export function hostMeasure(): MeasureWords {
  knowLetters();
  return measureOn(createCanvas(1, 1).getContext('2d'), hostFamily);
}

/** Draws a composition as a picture; `scale` is pixels per unit of it. */
export async function drawComposition(
  composition: Composition,
  clips: readonly ClipOnDisk[],
  scale: number,
  signal?: AbortSignal,
): Promise<Result<Canvas>> {
  const canvas = createCanvas(Math.round(composition.width * scale), Math.round(composition.height * scale));
  const paper = canvas.getContext('2d');
  paper.scale(scale, scale);
  paper.fillStyle = composition.ground;
  paper.fillRect(0, 0, composition.width, composition.height);
  const drawn = await eachPicture(
    composition,
    clips,
    (index, picture) => {
      const placed = composition.pictures[index];
      if (!placed) return;
      const { crop, at } = placed;
      paper.imageSmoothingEnabled = true;
      paper.imageSmoothingQuality = 'high';
      paper.drawImage(picture, crop.x, crop.y, crop.width, crop.height, at.x, at.y, at.width, at.height);
    },
    signal,
  );
  if (!drawn.ok) return drawn;
  knowLetters();
  paint(paper, composition.over, hostFamily);
  return success(canvas);
}

/** Hands over every film picture of a composition, by its place in the list; one is held at a time. */
export async function eachPicture(
  { pictures }: Composition,
  clips: readonly ClipOnDisk[],
  hand: (index: number, picture: Canvas) => void,
  signal?: AbortSignal,
): Promise<Result<null>> {
  for (const [swim, source] of clips.entries()) {
    const own = pictures.flatMap((placed, index) => (placed.swim === swim ? [{ placed, index }] : []));
    const read = await readPictures(
      source.file,
      source.clip,
      own.map(({ placed }) => placed.frame),
      ({ frame, width, height, rgba }) => {
        const canvas = createCanvas(width, height);
        canvas
          .getContext('2d')
          .putImageData(new ImageData(new Uint8ClampedArray(rgba.buffer), width, height), 0, 0);
        for (const { placed, index } of own) if (placed.frame === frame) hand(index, canvas);
      },
      signal,
    );
    if (!read.ok) return read;
  }
  return signal?.aborted ? failure('cancelled') : success(null);
}
