import { proposeEvents } from '#core/follow/propose-events';
import { landmarkNames } from '#core/marks/landmark';
import { hasPoint } from '#core/swim-file/has-point';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { headlineReadings } from '#core/measures/headline-readings';
import type { CoachFile } from '#core/swim-file/coach-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { realTimeOf } from '#core/timeline/clip-clock';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';

/** What a summary takes from a swim's file without its marks being read. */
export interface SwimGlance extends Pick<Swim, 'id' | 'changedAt' | 'card' | 'clip'> {
  readonly eventCount: number;
  readonly postureCount: number;
}

/** A summary without readings. Thumbnail, copies and clip status are for the caller, who can look at the disk. */
export function summariseGlance(swim: SwimGlance, revision: string): SwimSummary {
  const table = tableFromRecord(swim.clip.frameTimes);
  const clock = { table, slowdown: swim.clip.slowdown.factor };
  return {
    id: swim.id,
    revision,
    changedAt: swim.changedAt,
    card: swim.card,
    clip: {
      originalName: swim.clip.originalName,
      width: swim.clip.width,
      height: swim.clip.height,
      frames: table.starts.length,
      seconds: realTimeOf(clock, table.starts.length - 1),
      slowdown: swim.clip.slowdown.factor,
      inside: swim.clip.place.kind === 'inside',
      fingerprint: swim.clip.fingerprint,
    },
    eventCount: swim.eventCount,
    postureCount: swim.postureCount,
    seen: null,
    hasThumbnail: false,
    copies: 0,
    clipStatus: 'missing',
    headline: [],
  };
}

/** A moment known no better than this, seconds (one standard deviation), is called doubtful on the shelf. Our choice. */
const doubtfulSeconds = 0.05;

function seenSoFar(swim: Swim): SwimSummary['seen'] {
  const pictures = Math.max(
    0,
    ...landmarkNames.map((name) =>
      swim.seen.reduce((sum, { landmark, points }) => sum + (landmark === name ? points.length : 0), 0),
    ),
  );
  if (pictures === 0) return null;
  const table = tableFromRecord(swim.clip.frameTimes);
  const open = proposeEvents(swim, { table, slowdown: swim.clip.slowdown.factor });
  const doubtful = open.filter(({ unsure, sdSeconds }) => unsure || sdSeconds > doubtfulSeconds);
  return { pictures, open: open.length, doubtful: doubtful.length };
}

/** What the shelf shows of a swim, with the readings of its tile. */
export function summariseSwim(swim: Swim, revision: string, coach: CoachFile): SwimSummary {
  return {
    ...summariseGlance(
      { ...swim, eventCount: swim.events.length, postureCount: swim.postures.filter(hasPoint).length },
      revision,
    ),
    seen: seenSoFar(swim),
    headline: headlineReadings(swim, coachMarkingError(coach, swim.clip.height)),
  };
}
