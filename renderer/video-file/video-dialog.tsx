import { useMemo, useRef, useState } from 'react';
import { placesOf, sharedPlaces } from '#core/compare/pair-clock';
import { errorWords } from '#core/host-contract/error-words';
import { videoMadeSchema } from '#core/host-contract/operations/video-operations';
import { speedWords } from '#core/video/speed-words';
import { videoRun } from '#core/video/video-run';
import { Dialog } from '../ui/dialog';
import type { OpenSwim } from '../open-swim/open-swim';
import { keepInViewStore } from '../open-swim/keep-in-view';
import { type SavedFile, SavedList } from '../export/saved-list';
import { useConsent } from '../export/use-consent';
import { followJob } from '../host/follow-job';
import type { HostClient } from '../host/host-client';
import type { FrameSource } from '../video/frame-source';
import { VideoChoicesForm } from './video-choices-form';
import { VideoPreview } from './video-preview';
import { type VideoChoices, videoPlanOf, type VideoRequest } from './video-request';
import './video-dialog.css';
import { videoFileWords } from '#core/words/video-file';

interface Props {
  readonly host: HostClient;
  readonly request: VideoRequest;
  readonly sources: readonly (FrameSource | null)[];
  /** The swims it shows. */
  readonly swims: readonly OpenSwim[];
  /** Brings unsaved marks to the disk, where the host reads them. */
  readonly save: () => Promise<void>;
  readonly onClose: () => void;
}

type Making =
  | { readonly kind: 'ready' }
  | { readonly kind: 'making'; readonly share: number | null; readonly words: string }
  | ({ readonly kind: 'made' } & SavedFile)
  | { readonly kind: 'failed'; readonly words: string };

const numberOf = (text: string): number => Number(text.replace(',', '.'));

/** Chooses what goes into a video and how fast it runs, shows a picture of it, and has the host make it. */
export function VideoDialog({ host, request, sources, swims, save, onClose }: Props) {
  const { parts, mode } = request;
  const sides = useMemo(() => parts.map(({ side }) => side), [parts]);
  const place = mode === 'cycle' ? 'cycle' : 'time';
  const unit = place === 'cycle' ? 100 : 1;
  const [choices, setChoices] = useState<VideoChoices>(() => {
    const { from, to } = sharedPlaces(sides, place) ?? placesOf(sides, place);
    return {
      from,
      to,
      slow: 4,
      rate: 30,
      width: 1920,
      show: { bodyLine: true, angles: false, score: true, flashes: true, facts: true },
      keepInView: keepInViewStore.getState().keep,
      caption: '',
      sound: false,
    };
  });
  const [fields, setFields] = useState(() => ({
    from: (choices.from * unit).toFixed(2),
    to: (choices.to * unit).toFixed(2),
  }));
  const [picture, setPicture] = useState(0);
  const consent = useConsent(swims);
  const [making, setMaking] = useState<Making>({ kind: 'ready' });
  const stop = useRef<AbortController | null>(null);
  const plan = useMemo(() => videoPlanOf(request, choices), [request, choices]);
  const run = useMemo(() => videoRun(parts, plan), [parts, plan]);
  const usable = choices.to > choices.from && run.pictures > 1;

  const change = (part: Partial<VideoChoices>): void => {
    setChoices((now) => ({ ...now, ...part }));
    if (making.kind !== 'making') setMaking({ kind: 'ready' });
  };
  const type = (end: 'from' | 'to', text: string): void => {
    setFields((now) => ({ ...now, [end]: text }));
    const value = numberOf(text) / unit;
    if (Number.isFinite(value) && text.trim() !== '') change({ [end]: value });
  };
  const make = async (): Promise<void> => {
    const stopping = new AbortController();
    stop.current = stopping;
    setMaking({ kind: 'making', share: null, words: videoFileWords('savingMarks') });
    await save();
    const started = await host.call('video/export', { plan });
    const result = started.ok
      ? await followJob(host, started.value.jobId, {
          result: videoMadeSchema,
          signal: stopping.signal,
          onProgress: (share, words) => setMaking({ kind: 'making', share, words }),
        })
      : started;
    stop.current = null;
    consent.used();
    if (result.ok) setMaking({ kind: 'made', name: result.value.name, path: result.value.path });
    else if (result.error.code === 'cancelled') setMaking({ kind: 'ready' });
    else {
      const { what, todo } = errorWords(result.error);
      setMaking({ kind: 'failed', words: videoFileWords('noVideoMade', { what, todo }) });
    }
  };
  const leave = (): void => {
    // a video being made is the coach's to stop first: closing by mistake must not cost minutes of work
    if (making.kind !== 'making') onClose();
  };
  const busy = making.kind === 'making';

  return (
    <Dialog
      title={parts.length > 1 ? videoFileWords('videoBothSide') : videoFileWords('videoSwim')}
      onCancel={leave}
      wide
    >
      <form
        className="video-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (usable && consent.mayShow && !busy) void make();
        }}
      >
        <div className="video-seen">
          <VideoPreview parts={parts} plan={plan} sources={sources} picture={picture} />
          <input
            type="range"
            min={0}
            max={Math.max(1, run.pictures - 1)}
            value={Math.min(picture, run.pictures - 1)}
            aria-label={videoFileWords('lookThroughVideo')}
            aria-valuetext={videoFileWords('picture', { picture: picture + 1, pictures: run.pictures })}
            onChange={(event) => setPicture(Number(event.target.value))}
          />
        </div>
        <VideoChoicesForm
          request={request}
          choices={choices}
          fields={fields}
          busy={busy}
          change={change}
          type={type}
        />
        <div className="dialog-foot video-foot">
          {consent.question}
          {busy ? (
            <>
              <progress
                value={making.share ?? undefined}
                max={1}
                aria-label={videoFileWords('howMuchMade')}
              />
              <output>{making.words}</output>
              <button type="button" onClick={() => stop.current?.abort()}>
                {videoFileWords('stop')}
              </button>
            </>
          ) : (
            <>
              <button type="submit" className="primary" disabled={!usable || !consent.mayShow}>
                {videoFileWords('saveVideo')}
              </button>
              <button type="button" onClick={onClose}>
                {videoFileWords('close')}
              </button>
              <output className="video-length">
                {usable
                  ? videoFileWords('sLong', {
                      pictures: (run.pictures / choices.rate).toFixed(1),
                      speed: speedWords(choices.slow),
                    })
                  : videoFileWords('endMustComeAfter')}
              </output>
            </>
          )}
          {making.kind === 'made' && <SavedList files={[making]} host={host} />}
          {making.kind === 'failed' && <p role="alert">{making.words}</p>}
        </div>
      </form>
    </Dialog>
  );
}
