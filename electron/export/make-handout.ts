import type { Canvas } from '@napi-rs/canvas';
import { compositionPdf } from '#core/drawing/composition-pdf';
import { openLetters } from '#core/drawing/pdf-letters';
import type { ExportSource } from '#core/exporting/export-source';
import { composeHandout } from '#core/handout/compose-handout';
import type { Handout } from '#core/handout/handout-file';
import { handoutTitle } from '#core/handout/handout-title';
import { type Result, success } from '#core/host-contract/host-error';
import { type ClipOnDisk, drawComposition, eachPicture } from './draw-composition';
import { letterBytes } from './letters';
import { createCanvas } from '@napi-rs/canvas';

/** Pixels a point: 200 to the inch, as fine as a home printer shows. */
export const handoutScale = 200 / 72;

/** The handout of a swim as PDF and PNG, both from one composition; and letters it could not print. */
export async function makeHandout(
  handout: Handout,
  source: ExportSource,
  clip: ClipOnDisk,
  madeAt: Date,
): Promise<Result<{ pdf: Uint8Array; png: Uint8Array; missing: readonly string[] }>> {
  const letters = openLetters(await letterBytes());
  const composition = composeHandout(handout, source, letters.measure);
  const drawn = await drawComposition(composition, [clip], handoutScale);
  if (!drawn.ok) return drawn;
  const jpegs: Uint8Array[] = [];
  const cut = await eachPicture(composition, [clip], (index, picture) => {
    const crop = composition.pictures[index]?.crop;
    if (!crop) return;
    const part: Canvas = createCanvas(Math.round(crop.width), Math.round(crop.height));
    part
      .getContext('2d')
      .drawImage(picture, crop.x, crop.y, crop.width, crop.height, 0, 0, part.width, part.height);
    jpegs[index] = part.toBuffer('image/jpeg', 92);
  });
  if (!cut.ok) return cut;
  const pdf = await compositionPdf(composition, jpegs, letters, {
    title: handoutTitle(source.swim.card),
    madeAt,
  });
  const words = composition.over.flatMap((op) => (op.op === 'words' ? op.words : [])).join('');
  return success({ pdf, png: await drawn.value.encode('png'), missing: letters.missing(words) });
}
