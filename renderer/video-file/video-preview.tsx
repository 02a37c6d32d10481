import { useEffect, useRef } from 'react';
import type { PairPart } from '#core/compare/pair-part';
import { measureOn, paint } from '#core/drawing/paint';
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
      pictures.forEach((each, index) => {
        const box = layout.pictures[index];
        if (!each || !box) return;
        paper.save();
        paper.translate(plan.sides[index]?.mirrored ? box.x + box.width : box.x, box.y);
        if (plan.sides[index]?.mirrored) paper.scale(-1, 1);
        each.draw(paper, 0, 0, box.width, box.height);
        paper.restore();
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
