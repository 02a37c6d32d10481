import { useCallback, useEffect, useRef, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { HostClient } from '../host/host-client';
import type { ClipFacts } from '../video/frame-source';
import { type ClipToAdd, inputOf } from './clip-to-add';
import { checkAdding, type FilmCheck } from './check-adding';
import { factsOf } from './look-at-clip';
import { pictureOf } from './thumbnail';

interface Look {
  readonly facts: ClipFacts | null;
  /** Address of a picture of it, once there is one. */
  readonly picture: string | null;
  /** The same picture's bytes, to be waited for; null when it can't be had. */
  readonly thumbnail: Promise<Blob | null>;
  /** What a check of every picture found, or how far it is; null where there is none. */
  readonly check: FilmCheck | null;
  readonly trouble: HostError | null;
  /** What is being done meanwhile; empty when there is nothing to say. */
  readonly words: string;
}
export interface ClipLook extends Look {
  /** The clip as it is to be added: in the library already when it had to be sent to be looked at. */
  readonly toAdd: ClipToAdd;
  /** It is being added now: no more work is done for the look. */
  readonly endCheck: () => void;
  /** It has become a swim: what was sent for the look is no longer taken back. */
  readonly taken: () => void;
}
const nothingYet: Look = {
  facts: null,
  picture: null,
  thumbnail: Promise.resolve(null),
  check: null,
  trouble: null,
  words: '',
};

/** Reads a clip's facts, then a picture of it; both are let go when the clip is, and so is what was sent for it. */
export function useLookAtClip(adding: ClipToAdd, track: number | null, host: HostClient): ClipLook {
  const [look, setLook] = useState<Look>(nothingYet);
  const [sent, setSent] = useState<ArrivedClip | null>(null);
  const mine = useRef<ArrivedClip | null>(null);
  const checking = useRef<AbortController | null>(null);

  useEffect(() => {
    const leaving = new AbortController();
    let address: string | null = null;
    const showPicture = (blob: Blob | null): void => {
      if (leaving.signal.aborted || !blob) return;
      address = URL.createObjectURL(blob);
      const made = address;
      setLook((now) => ({ ...now, picture: made }));
    };
    setLook(nothingYet);
    const start = async (): Promise<void> => {
      const looked = await factsOf({
        adding,
        track,
        sent: mine.current,
        host,
        signal: leaving.signal,
        onWords: (words) => setLook((now) => (leaving.signal.aborted ? now : { ...now, words })),
        onSent: (clip) => hold(clip),
      });
      if (leaving.signal.aborted) return;
      if (!looked.ok) {
        setLook({ ...nothingYet, trouble: looked.error });
        return;
      }
      const { facts, picture } = looked.value;
      const thumbnail =
        facts.decodable && !facts.fields
          ? pictureOf({ ...inputOf(adding, host), track }, leaving.signal)
          : Promise.resolve(picture);
      setLook({ ...nothingYet, facts, thumbnail });
      void checkAll(facts);
      showPicture(await thumbnail);
    };
    const hold = (clip: ArrivedClip): void => {
      if (leaving.signal.aborted) void host.call('clip/discard', { clipId: clip.clipId });
      else {
        mine.current = clip;
        setSent(clip);
      }
    };
    const checkAll = async (facts: ClipFacts): Promise<void> => {
      const ending = new AbortController();
      checking.current = ending;
      const signal = AbortSignal.any([leaving.signal, ending.signal]);
      const onCheck = (check: FilmCheck | null): void => {
        if (!signal.aborted) setLook((now) => ({ ...now, check }));
      };
      const clip = mine.current ?? (adding.kind === 'referred' ? adding.clip : null);
      await checkAdding({ adding, clip, facts, host, signal, onCheck });
    };
    void start();
    return () => {
      leaving.abort();
      if (address) URL.revokeObjectURL(address);
    };
  }, [adding, track, host]);

  useEffect(
    () => () => {
      const left = mine.current;
      mine.current = null;
      if (left) void host.call('clip/discard', { clipId: left.clipId });
    },
    [host],
  );

  const endCheck = useCallback(() => checking.current?.abort(), []);
  const taken = useCallback(() => {
    mine.current = null;
  }, []);
  const toAdd: ClipToAdd = sent ? { kind: 'referred', key: adding.key, clip: sent, copied: false } : adding;
  return { ...look, toAdd, endCheck, taken };
}
