import type { PairPart } from '#core/compare/pair-part';
import type { Rect } from '#core/drawing/composition';
import { sideCrops } from '#core/video/side-crops';
import { sideLayers, standingOps } from '#core/video/side-ops';
import { speedWords } from '#core/video/speed-words';
import { videoStrip } from '#core/video/strip-ops';
import type { Box, VideoLayout } from '#core/video/video-layout';
import type { VideoPlan } from '#core/video/video-plan';
import type { VideoRun } from '#core/video/video-run';
import { createLayerPainter } from './layer-painter';
import { type Layer, layOver } from './layer';
import { resample } from './resample';
import { blackenBox, blackPlanes, copyInto, type Planes } from './planes';

/** Draws the pictures of a video one after another: films first, then what lies over them. */
export interface PictureDrawer {
  begin(): void;
  /** A swim's picture, whole; the part of it that is shown while the swims are on `frames` goes to its place. */
  lay(which: number, picture: Planes, frames: readonly number[]): void;
  /** The whole picture; it is drawn over again three pictures later. */
  finish(frames: readonly number[]): Uint8Array;
}

/** A picture being made, and the playheads that lie on its strip. */
interface Sheet {
  readonly planes: Planes;
  heads: readonly Layer[];
}

const isSame = (one: Box, other: Box): boolean => one.width === other.width && one.height === other.height;

const scaled = ({ x, y, width, height }: Rect, share: number): Rect => ({
  x: x * share,
  y: y * share,
  width: width * share,
  height: height * share,
});

export function createPictureDrawer(
  parts: readonly PairPart[],
  plan: VideoPlan,
  layout: VideoLayout,
  run: VideoRun,
): PictureDrawer {
  const painter = createLayerPainter(layout.width, layout.height);
  const invented = parts.some(({ swim }) => swim.card.invented);
  const speed = plan.mode === 'cycle' ? `${speedWords(plan.slow)}, in % of the cycle` : speedWords(plan.slow);
  // each piece a layer of its own: small ones cost little, a wide one mostly empty costs its whole width
  const standing = standingOps(parts, plan, layout, speed, invented, painter.measure).map((op) =>
    painter.paint([op]),
  );
  const [caption, ...overPictures] = layout.caption
    ? [standing.at(-1), ...standing.slice(0, -1)]
    : [null, ...standing];
  const mode = plan.mode === 'cycle' ? 'cycle' : 'time';
  const strip = layout.strip && videoStrip(parts, mode, run, layout.strip, layout.letters);
  const stripLayer = strip ? painter.paint(strip.ops) : null;
  // three in turn: one is drawn while the pipe still holds those before. What does not change is drawn once
  const sheets = [0, 1, 2].map((): Sheet => {
    const planes = blackPlanes(layout.width, layout.height);
    for (const layer of [stripLayer, caption]) if (layer) layOver(planes, layer);
    return { planes, heads: [] };
  });
  let turn = -1;
  const sheet = (): Sheet => {
    const found = sheets[turn % sheets.length];
    if (!found) throw new Error('a picture is begun before it is drawn');
    return found;
  };

  return {
    begin() {
      turn += 1;
      // words beside a picture that does not fill its room would stay there
      layout.cells.forEach((cell, index) => {
        const picture = layout.pictures[index];
        if (picture && !isSame(cell, picture)) blackenBox(sheet().planes, cell);
      });
    },
    lay(which, picture, frames) {
      const place = layout.pictures[which];
      const clip = parts[which]?.swim.clip;
      if (!place || !clip) return;
      const crop = sideCrops(parts, plan, layout, frames)[which];
      const share = picture.width / clip.width;
      const shown =
        crop && plan.keepInView ? resample(picture, scaled(crop, share), place.width, place.height) : picture;
      copyInto(sheet().planes, shown, place.x, place.y);
    },
    finish(frames) {
      const now = sheet();
      const over = parts.flatMap((_, index) => {
        const layers = sideLayers(parts, plan, layout, frames, index, painter.measure);
        return [
          painter.again(`line ${index}`, layers.line),
          painter.again(`where ${index}`, layers.where),
          painter.again(`flash ${index}`, layers.flash),
          ...layers.light.map((edge, n) => painter.again(`light ${index} ${n}`, [edge])),
        ];
      });
      for (const layer of [...over, ...overPictures]) if (layer) layOver(now.planes, layer);
      if (strip && stripLayer) {
        for (const { left, width } of now.heads)
          layOver(now.planes, stripLayer, { from: left, to: left + width });
        now.heads = strip
          .playheads(frames)
          .flatMap((head, n) => painter.again(`playhead ${n}`, [head]) ?? []);
        for (const head of now.heads) layOver(now.planes, head);
      }
      return now.planes.bytes;
    },
  };
}
