import type { Composition } from '#core/drawing/composition';
import { compositionPdf } from '#core/drawing/composition-pdf';
import type { SwimCard } from '#core/swim-file/swim-schema';
import { exportName } from '#core/exporting/export-name';
import { handoutTitle } from '#core/handout/handout-title';
import { canvasBlob, drawComposition, pictureOf } from '../export/draw-composition';
import { type ExportJob, PictureTooLarge } from '../export/make-exports';
import type { FrameSource } from '../video/frame-source';
import { type HandoutLetters, pageFamily } from './handout-letters';

/** Pixels a point: 200 to the inch, as fine as a home printer shows. */
const pngScale = 200 / 72;

interface Page {
  readonly composition: Composition;
  readonly letters: HandoutLetters;
  readonly film: FrameSource | null;
  readonly card: SwimCard;
}

/** The page as PDF and as PNG, both of the composition that the preview shows. */
export function handoutJobs({ composition, letters, film, card }: Page): {
  readonly pdf: ExportJob;
  readonly png: ExportJob;
} {
  const name = (ending: string): string => exportName(card, ['handout'], ending);
  return {
    pdf: {
      name: name('pdf'),
      async make(signal) {
        const jpegs = film ? await cropJpegs(composition, film, signal) : [];
        const bytes = await compositionPdf(composition, jpegs, letters, {
          title: handoutTitle(card),
          madeAt: new Date(),
        });
        return new Blob([bytes.slice().buffer], { type: 'application/pdf' });
      },
    },
    png: {
      name: name('png'),
      async make(signal) {
        const canvas = document.createElement('canvas');
        await drawComposition(canvas, composition, {
          scale: pngScale,
          family: `"${pageFamily}"`,
          sources: [film],
          signal,
        });
        const png = await canvasBlob(canvas, 'image/png');
        if (!png) throw new PictureTooLarge(name('png'));
        return png;
      },
    },
  };
}

/** Each picture's part at the film's own size: no more than the film holds, no less. */
async function cropJpegs(
  { pictures }: Composition,
  film: FrameSource,
  signal: AbortSignal,
): Promise<readonly Uint8Array[]> {
  const jpegs: Uint8Array[] = [];
  for (const { frame, crop } of pictures) {
    const picture = await pictureOf(film, frame, signal);
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(crop.width);
    canvas.height = Math.round(crop.height);
    const paper = canvas.getContext('2d', { alpha: false });
    if (!paper) throw new Error('a canvas has a 2D context');
    picture.draw(paper, -crop.x, -crop.y, picture.width, picture.height);
    const blob = await canvasBlob(canvas, 'image/jpeg', 0.92);
    if (!blob) throw new PictureTooLarge('A picture of the handout');
    jpegs.push(new Uint8Array(await blob.arrayBuffer()));
  }
  return jpegs;
}
