import { useMemo } from 'react';
import { videoName, videoTitle } from '../video-file/name-video';
import { VideoDialog } from '../video-file/video-dialog';
import type { VideoRequest } from '../video-file/video-request';
import { pairFrames, pairPart, usePair } from './pair-session';
import { bothSwims } from './pair-view';

/** The video of both swims, from how they stand when it is asked for. */
export function PairVideo({ onClose }: { readonly onClose: () => void }) {
  const session = usePair();
  const request = useMemo((): VideoRequest => {
    const { mode, lead, locks, stretches, mirrored, sameLength, lay } = session.view.getState();
    const parts = bothSwims.map((which) => pairPart(session, which));
    return {
      parts,
      sides: bothSwims.map((which) => {
        const swim = session.swims[which].document.swim();
        return {
          swimId: swim.id,
          stretch: stretches[which],
          lock: locks[which],
          mirrored: mirrored[which],
          title: videoTitle(swim.card),
        };
      }),
      mode,
      lead,
      frames: pairFrames(session),
      sameLength,
      lay,
      name: videoName(parts.map(({ swim }) => swim.card)),
    };
  }, [session]);
  const sources = useMemo(() => session.swims.map(({ film }) => film.getState().source), [session]);
  return (
    <VideoDialog
      host={session.host}
      request={request}
      sources={sources}
      swims={session.swims}
      save={async () => {
        await Promise.all(session.swims.map(({ autosave }) => autosave.flush()));
      }}
      onClose={onClose}
    />
  );
}
