import { matchedScales } from '../compare/lay-body-line';
import type { PairPart } from '../compare/pair-part';
import { letterSize } from '../drawing/still-ops';
import type { VideoPlan } from './video-plan';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where everything of a video lies; all numbers of boxes are even, as half-size colour planes need them. */
export interface VideoLayout {
  readonly width: number;
  readonly height: number;
  /** Room of each swim. */
  readonly cells: readonly Box[];
  /** Its picture within the room. */
  readonly pictures: readonly Box[];
  /** Whether both bodies are shown equally long. */
  readonly sameLength: boolean;
  /** Room of the coach's own words under the pictures. */
  readonly caption: Box | null;
  readonly strip: Box | null;
  /** Size of letters. */
  readonly letters: number;
}

const even = (value: number): number => Math.max(2, 2 * Math.round(value / 2));
/** Our default: no video is taller than this, score included. */
const greatestHeight = 1920;
/** Height of a lane of the score beside the size of letters. Our default. */
const laneShare = 1.9;

/** Lays a video out: swims side by side, the score under them. Pictures are never made larger than they are. */
export function videoLayout(parts: readonly PairPart[], plan: VideoPlan): VideoLayout {
  const clips = parts.map(({ swim }) => swim.clip);
  const widest = clips.reduce((sum, clip) => Math.max(sum, clip.width * clips.length), 0);
  const lanes = clips.length;
  let width = even(Math.min(plan.width, widest));
  const stripOf = (letters: number): number =>
    plan.show.score ? even(letters * (2.6 + laneShare * lanes * 2.9)) : 0;
  const cellOf = (): { width: number; height: number } => {
    const cell = width / clips.length;
    return { width: cell, height: Math.max(...clips.map((clip) => (cell * clip.height) / clip.width)) };
  };
  // a tall clip is narrowed until score and all fit
  const letters = (): number => Math.max(12, letterSize(cellOf()));
  while (width > 320 && cellOf().height + stripOf(letters()) > greatestHeight) width = even(width * 0.95);
  const size = letters();
  const cellWidth = even(width / clips.length);
  width = cellWidth * clips.length;
  const cellHeight = even(cellOf().height);
  const cells = clips.map((_, i) => ({ x: i * cellWidth, y: 0, width: cellWidth, height: cellHeight }));
  const fits = clips.map((clip) => Math.min(cellWidth / clip.width, cellHeight / clip.height));
  const lengths = parts.map(({ context }) => context.bodyLength?.pixels ?? null);
  const matched =
    plan.sameLength && parts.length === 2
      ? matchedScales([fits[0] ?? 1, fits[1] ?? 1], [lengths[0] ?? null, lengths[1] ?? null])
      : null;
  const pictures = clips.map((clip, i): Box => {
    const cell = cells[i] ?? { x: 0, y: 0, width: cellWidth, height: cellHeight };
    const scale = (matched ?? fits)[i] ?? 1;
    const own = {
      width: Math.min(cellWidth, even(clip.width * scale)),
      height: Math.min(cellHeight, even(clip.height * scale)),
    };
    return {
      ...own,
      x: cell.x + 2 * Math.floor((cellWidth - own.width) / 4),
      y: cell.y + 2 * Math.floor((cellHeight - own.height) / 4),
    };
  });
  const caption = plan.caption === '' ? 0 : even(size * 2.2);
  const strip = stripOf(size);
  return {
    width,
    height: cellHeight + caption + strip,
    cells,
    pictures,
    sameLength: matched !== null,
    caption: caption > 0 ? { x: 0, y: cellHeight, width, height: caption } : null,
    strip: strip > 0 ? { x: 0, y: cellHeight + caption, width, height: strip } : null,
    letters: size,
  };
}
