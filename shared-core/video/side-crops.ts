import type { PairPart } from '../compare/pair-part';
import type { Rect } from '../drawing/composition';
import { closeView } from '../drawing/picture-view';
import { mirroredRoom, swimmerWindows } from '../drawing/swimmer-windows';
import type { VideoLayout } from './video-layout';
import type { VideoPlan } from './video-plan';

/**
 * What of each swim's picture a video shows in its place, picture pixels, as a mirror has it where the swim is mirrored. All of it, or
 * close to the swimmer as the stages are: never closer than the whole swimmer with a margin, and where both bodies are shown
 * equally long, no closer than the one allows that needs more room.
 */
export function sideCrops(
  parts: readonly PairPart[],
  plan: VideoPlan,
  layout: VideoLayout,
  frames: readonly number[],
): readonly Rect[] {
  const close = (which: number, most?: number) => {
    const [part, box] = [parts[which], layout.pictures[which]];
    if (!part || !box) throw new Error('a video has a picture for each of its swims');
    const { clip } = part.swim;
    const room = plan.keepInView ? swimmerWindows(part.swim).windowOn(frames[which] ?? 0) : null;
    const shown = plan.sides[which]?.mirrored ? mirroredRoom(room, clip.width) : room;
    return { clip, box, view: closeView(shown, clip, box, most) };
  };
  const nearness = parts.map((_, which) => {
    const { clip, box, view } = close(which);
    return (view.scale * clip.width) / box.width;
  });
  const near = Math.min(...nearness);
  return parts.map((part, which) => {
    if (!plan.keepInView) return { x: 0, y: 0, width: part.swim.clip.width, height: part.swim.clip.height };
    const width = layout.pictures[which]?.width ?? 1;
    const most = layout.sameLength ? (near * width) / part.swim.clip.width : undefined;
    const { clip, box, view } = close(which, most);
    return insideOf(clip, {
      x: -view.x / view.scale,
      y: -view.y / view.scale,
      width: box.width / view.scale,
      height: box.height / view.scale,
    });
  });
}

/** The part of a crop that the picture has: a place whose sides were made even may reach a pixel out of it. */
function insideOf(picture: { readonly width: number; readonly height: number }, crop: Rect): Rect {
  const [left, top] = [Math.max(0, crop.x), Math.max(0, crop.y)];
  return {
    x: left,
    y: top,
    width: Math.min(picture.width, crop.x + crop.width) - left,
    height: Math.min(picture.height, crop.y + crop.height) - top,
  };
}
