import { limbs } from './limb';
import { countColours, emptyColourCount, limbContrast, type MarkedLimb } from './limb-contrast';
import type { MarkedPoint } from './marked-points';
import type { Point } from '../units/point';
import type { ColourPicture } from './colour-picture';
import { type GreyPicture, ownPlace } from './grey-picture';

/** Arms, shanks and feet are bare on nearly everybody; trunk, thigh and head wear suits and caps. */
const bareFrom: ReadonlySet<string> = new Set(['wrist', 'elbow', 'knee', 'ankle']);

/**
 * Learns from the marked frames among the pictures what sets limbs apart from what is around the swimmer, and gives
 * every picture as that contrast. Cost: one look-up a pixel.
 */
export function contrastPictures(
  pictures: readonly ColourPicture[],
  marks: readonly MarkedPoint[],
  bodyLength: number,
): readonly GreyPicture[] {
  const count = emptyColourCount();
  for (const picture of pictures) {
    const own = marks.filter(({ frame }) => frame === picture.frame);
    if (own.length === 0) continue;
    const at = (name: string): Point | null => {
      const mark = own.find(({ landmark }) => landmark === name);
      return mark ? ownPlace(picture, mark) : null;
    };
    const marked = limbs.flatMap(({ from, to, halfWidth }): MarkedLimb[] => {
      const a = at(from);
      const b = at(to);
      const bare = bareFrom.has(from) || to === 'elbow';
      return a && b ? [{ from: a, to: b, halfWidth: halfWidth * bodyLength, bare }] : [];
    });
    // a picture with half of its body marked would teach the other half as water
    if (marked.length >= limbs.length - 2) countColours(count, picture, marked);
  }
  const table = limbContrast(count);
  return pictures.map(({ colours, ...place }): GreyPicture => {
    const grey = new Uint8Array(colours.length);
    for (let i = 0; i < colours.length; i++) grey[i] = table[colours[i] as number] ?? 0;
    return { ...place, grey };
  });
}
