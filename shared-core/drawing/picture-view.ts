import type { Rect } from './composition';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** What of a picture is shown, and where: both of one aspect, so that nothing is stretched or cut. */
export interface PictureView {
  readonly crop: Rect;
  readonly at: Rect;
}

/** A crop is never smaller than this share of the picture's width: below it film is only blocks. Our default. */
const leastShare = 0.3;

/**
 * Shows at least `room` of a picture in a slot of the page: widened to the slot's aspect as far as the picture goes, and
 * where it doesn't go that far, the slot is left partly empty rather than cutting into the room. Without a room the
 * whole picture is shown.
 */
export function pictureView(room: Rect | null, picture: Size, slot: Rect): PictureView {
  const whole: Rect = { x: 0, y: 0, width: picture.width, height: picture.height };
  if (!room) return { crop: whole, at: fitted(whole, slot) };
  const aspect = slot.width / slot.height;
  const wanted = Math.max(room.width, room.height * aspect, picture.width * leastShare);
  const width = Math.min(picture.width, wanted);
  const height = Math.min(picture.height, Math.max(room.height, wanted / aspect));
  // moved into the picture, so that it still holds all of the room that the picture has
  const crop = {
    x: held(room.x + room.width / 2, width, picture.width),
    y: held(room.y + room.height / 2, height, picture.height),
    width,
    height,
  };
  return { crop, at: fitted(crop, slot) };
}

/** How a picture lies in a slot that begins at 0: slot = picture · scale + offset. */
export interface CloseView {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/**
 * How a picture lies in a slot so that `room` of it is seen as `pictureView` shows it, but no larger than `most` times its own
 * size. What lies beside the room fills the slot.
 */
export function closeView(room: Rect | null, picture: Size, slot: Size, most = Infinity): CloseView {
  const { crop, at } = pictureView(room, picture, { x: 0, y: 0, ...slot });
  const scale = Math.min(most, at.width / crop.width);
  const offset = (middle: number, length: number, room: number): number =>
    length * scale <= room
      ? (room - length * scale) / 2
      : Math.min(0, Math.max(room - length * scale, room / 2 - middle * scale));
  return {
    scale,
    x: offset(crop.x + crop.width / 2, picture.width, slot.width),
    y: offset(crop.y + crop.height / 2, picture.height, slot.height),
  };
}

const held = (middle: number, size: number, whole: number): number =>
  Math.max(0, Math.min(whole - size, middle - size / 2));

/** As large as it goes in the slot, in its middle. */
function fitted(shown: Size, slot: Rect): Rect {
  const scale = Math.min(slot.width / shown.width, slot.height / shown.height);
  const [width, height] = [shown.width * scale, shown.height * scale];
  return {
    x: slot.x + (slot.width - width) / 2,
    y: slot.y + (slot.height - height) / 2,
    width,
    height,
  };
}
