import { landmarkNames } from '#core/marks/landmark';
import { emptyScene } from '#core/swim-file/swim-schema';
import type { RemarkingItem } from '#core/uncertainty/remarking-plan';
import type { OpenSwim } from '../open-swim/open-swim';
import { createFollowStore } from '../open-swim/follow-store';
import { createSwimDocument } from '../open-swim/swim-document';
import { createViewStore } from '../open-swim/view-store';

/**
 * A bench with the same film and nothing on it: no marks, no body lines, no scene. What is marked here is thrown
 * away after it has been compared, so the first marks can neither be seen nor changed. Landmarks that are not asked for
 * count as hidden, so that the body line passes over them.
 */
export function blindSession(session: OpenSwim, item: RemarkingItem): OpenSwim {
  const swim = session.document.swim();
  const bare = {
    ...swim,
    events: [],
    followed: [],
    seen: [],
    cameraPath: [],
    dismissed: [],
    scene: emptyScene,
  };
  if (item.of === 'event')
    return {
      ...session,
      document: createSwimDocument({ ...bare, postures: [] }),
      follow: createFollowStore(),
      view: createViewStore({ frame: item.first, showAngles: false, pace: 0.25 }),
    };
  const asked = new Set(item.points.map(({ landmark }) => landmark));
  const hidden = landmarkNames.filter((name) => !asked.has(name));
  return {
    ...session,
    document: createSwimDocument({ ...bare, postures: [{ frame: item.frame, points: {}, hidden }] }),
    follow: createFollowStore(),
    view: createViewStore({
      frame: item.frame,
      showAngles: false,
      tool: 'body-line',
      nextLandmark: item.points[0]?.landmark ?? null,
    }),
  };
}
