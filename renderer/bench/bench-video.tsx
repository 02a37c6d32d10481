import { useMemo } from 'react';
import { pairPartOf } from '#core/compare/pair-part';
import { videoName, videoTitle } from '../video-file/name-video';
import { VideoDialog } from '../video-file/video-dialog';
import type { VideoRequest } from '../video-file/video-request';
import { clockOf, useOpenSwim } from '../open-swim/open-swim';

/** The video of the swim on the bench. */
export function BenchVideo({ onClose }: { readonly onClose: () => void }) {
  const session = useOpenSwim();
  const request = useMemo((): VideoRequest => {
    const swim = session.document.swim();
    const clock = clockOf(swim);
    const stretch = { first: 0, last: clock.table.starts.length - 1 };
    const lock = { on: 'frame', frame: 0 } as const;
    return {
      parts: [pairPartOf(swim, session.known.getState(), clock, stretch, lock)],
      sides: [{ swimId: swim.id, stretch, lock, mirrored: false, title: videoTitle(swim.card) }],
      mode: 'time',
      lead: 0,
      frames: [session.view.getState().frame],
      sameLength: false,
      lay: null,
      name: videoName([swim.card]),
    };
  }, [session]);
  const swims = useMemo(() => [session], [session]);
  const sources = useMemo(() => [session.film.getState().source], [session]);
  return (
    <VideoDialog
      host={session.host}
      request={request}
      sources={sources}
      swims={swims}
      save={() => session.autosave.flush()}
      onClose={onClose}
    />
  );
}
