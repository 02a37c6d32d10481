/**
 * Whether a bitmap has been closed (HTML: it then has no size). A stage may be asked to paint the picture of a film that was
 * put away a moment before the next one's came: it then keeps what it shows.
 */
export const isGone = (bitmap: ImageBitmap): boolean => bitmap.width === 0;
