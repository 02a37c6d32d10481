import type { ReadingNote } from '../../reading';
import type { BodyContext } from '../context/body-context';
import type { Measured } from './measured';
import { sizeChange } from '../context/size-change';

const byUnit = /^(m|L|px)(\/s)?$|^m²\/s$/;

/** What the coach must know of how the picture shows lengths, for a reading of a length. */
export function pictureNotes(
  context: BodyContext,
  { unit, usesScale, frames }: Pick<Measured, 'unit' | 'usesScale' | 'frames'>,
): readonly ReadingNote[] {
  const notes: ReadingNote[] = [];
  const metric = usesScale ?? /^m(\/s)?$/.test(unit);
  if (metric) notes.push(...(context.scale?.notes ?? []));
  if (frames.length === 0) return notes;
  if (byUnit.test(unit) && sizeChange(context.geometry)) notes.push('size-changes');
  const { camera } = context;
  if (byUnit.test(unit)) {
    if (camera.state !== 'stands') notes.push(`camera-${camera.state}`);
    else if (!camera.looked && context.postures.length > 1) notes.push('camera-not-looked-at');
  }
  for (const each of context.rectified.unfit) notes.push(`${each}-unfit`);
  return notes;
}
