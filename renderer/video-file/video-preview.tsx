import { useEffect, useRef } from 'react';
import type { PairPart } from '#core/compare/pair-part';
import { measureOn, paint } from '#core/drawing/paint';
import type { PictureView } from '#core/drawing/picture-view';
import { sideCrops } from '#core/video/side-crops';
import { sideLayers, standingOps } from '#core/video/side-ops';
import { speedWords } from '#core/video/speed-words';
import { videoStrip } from '#core/video/strip-ops';
import { videoLayout } from '#core/video/video-layout';
import type { VideoPlan } from '#core/video/video-plan';
import { videoRun } from '#core/video/video-run';
import type { FramePicture, FrameSource } from '../video/frame-source';
import { videoFileWords } from '#core/words/video-file';

interface Props {
  readonly parts: readonly PairPart[];
  readonly plan: VideoPlan;
  readonly sources: readonly (FrameSource | null)[];
  /** Which picture of the video is shown. */
  readonly picture: number;
}

/** A swim's picture in its place: what of it is shown, as a mirror has it where it is mirrored. */
function drawSide(
  paper: CanvasRenderingContext2D,
  picture: FramePicture,
  { crop, at }: PictureView,
  mirrored: boolean,
): void {
  const [across, down] = [at.width / crop.width, at.height / crop.height];
  paper.save();
  paper.beginPath();
  paper.rect(at.x, at.y, at.width, at.height);
  paper.clip();
  paper.translate(at.x - crop.x * across, at.y - crop.y * down);
  if (mirrored) paper.transform(-1, 0, 0, 1, picture.width * across, 0);
  picture.draw(paper, 0, 0, picture.width * across, picture.height * down);
  paper.restore();
}

/** One picture of the video as it will be, painted from the same list as the file is. */
export function VideoPreview({ parts, plan, sources, picture }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    let left = false;
    const run = videoRun(parts, plan);
    const frames = run.framesOf(Math.min(picture, run.pictures - 1));
    const draw = (pictures: readonly (FramePicture | undefined)[]): void => {
      const paper = canvas.current?.getContext('2d', { alpha: false });
      if (left || !paper || !canvas.current) return;
      const layout = videoLayout(parts, plan);
      canvas.current.width = layout.width;
      canvas.current.height = layout.height;
      const measure = measureOn(paper);
      const crops = sideCrops(parts, plan, layout, frames);
      pictures.forEach((each, index) => {
        const box = layout.pictures[index];
        const crop = crops[index];
        if (each && box && crop)
          drawSide(paper, each, { crop, at: box }, plan.sides[index]?.mirrored ?? false);
      });
      parts.forEach((_, index) => {
        const { line, where, flash, light } = sideLayers(parts, plan, layout, frames, index, measure);
        for (const ops of [line, where, flash, light]) paint(paper, ops);
      });
      const invented = parts.some(({ swim }) => swim.card.invented);
      paint(paper, standingOps(parts, plan, layout, speedWords(plan.slow), invented, measure));
      if (!layout.strip) return;
      const mode = plan.mode === 'cycle' ? 'cycle' : 'time';
      const strip = videoStrip(parts, mode, run, layout.strip, layout.letters);
      paint(paper, [...strip.ops, ...strip.playheads(frames)]);
    };
    Promise.all(frames.map((frame, index) => sources[index]?.show(frame, 0))).then(
      draw,
      // a newer request draws instead; what can't be decoded is left dark, as it would be said on the stage
      () => draw([]),
    );
    return () => {
      left = true;
    };
  }, [parts, plan, sources, picture]);
  return <canvas ref={canvas} className="video-preview" aria-label={videoFileWords('pictureVideoWill')} />;
}
