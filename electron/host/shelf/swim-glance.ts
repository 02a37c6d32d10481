import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { cardSchema, clipSchema, idSchema, swimFileVersion } from '#core/swim-file/swim-schema';
import { z } from 'zod';
import { revisionOf } from '../../disk/atomic-file';
import { summariseGlance } from './summarise-swim';

/** The head of a swim's file as this version writes it; marks are counted, not looked at. */
const headSchema = z.object({
  format: z.literal('submark-swim'),
  version: z.literal(swimFileVersion),
  id: idSchema,
  changedAt: z.string(),
  card: cardSchema,
  clip: clipSchema,
  events: z.array(z.unknown()),
  postures: z.array(z.unknown()),
});

/** A frame on which the coach only said that a point is hidden holds no body line. */
function isLaid(posture: unknown): boolean {
  if (typeof posture !== 'object' || posture === null || !('points' in posture)) return false;
  const { points } = posture;
  return typeof points === 'object' && points !== null && Object.keys(points).length > 0;
}

/**
 * Card and film of a swim from the text of its file, without readings and without trust in its marks: a tenth of the work
 * of reading it. Null when the text is anything but whole and of this version; then only reading it can tell what it is.
 */
export function glanceAtSwim(text: string):
  | (Pick<z.infer<typeof headSchema>, 'clip'> & {
      readonly summary: SwimSummary;
    })
  | null {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  const head = headSchema.safeParse(raw);
  if (!head.success) return null;
  const { events, postures, clip, ...rest } = head.data;
  const glance = { ...rest, clip, eventCount: events.length, postureCount: postures.filter(isLaid).length };
  return { clip, summary: summariseGlance(glance, revisionOf(text)) };
}
