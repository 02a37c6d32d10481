import type { Canvas } from '@napi-rs/canvas';
import { compositionPdf } from '#core/drawing/composition-pdf';
import type { ExportSource } from '#core/exporting/export-source';
import { composeHandout } from '#core/handout/compose-handout';
import type { Handout } from '#core/handout/handout-file';
import { handoutTitle } from '#core/handout/handout-title';
import { type Result, success } from '#core/host-contract/host-error';
import { type ClipOnDisk, drawComposition, eachPicture } from './draw-composition';
import { lettersFor } from './more-letters';
import { createCanvas } from '@napi-rs/canvas';

/** Pixels a point: 200 to the inch, as fine as a home printer shows. */
const handoutScale = 200 / 72;

/** The handout of a swim as PDF and PNG, both from one composition; and letters it could not print. */
export async function makeHandout(
  handout: Handout,
  source: ExportSource,
  clip: ClipOnDisk,
  madeAt: Date,
): Promise<Result<{ pdf: Uint8Array; png: Uint8Array; missing: readonly string[] }>> {
  const { swimmerName, drill } = source.swim.card;
  const written = `${swimmerName}${drill}${handout.cue}`;
  const letters = await lettersFor(written);
  const page = composeHandout(handout, source, letters.measure);
  const composition = { ...page, over: letters.outlined(page.over) };
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
  return success({ pdf, png: await drawn.value.encode('png'), missing: letters.missing(written) });
}
