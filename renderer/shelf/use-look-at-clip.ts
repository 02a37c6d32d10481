import { useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { HostClient } from '../host/host-client';
import type { ClipFacts } from '../video/frame-source';
import type { ClipToAdd } from './clip-to-add';
import { factsOf, pictureOf } from './look-at-clip';

export interface ClipLook {
  readonly facts: ClipFacts | null;
  /** Address of a picture of it, once there is one. */
  readonly picture: string | null;
  /** The same picture's bytes, to be waited for; null when it can't be had. */
  readonly thumbnail: Promise<Blob | null>;
  readonly trouble: HostError | null;
}
const nothingYet: ClipLook = {
  facts: null,
  picture: null,
  thumbnail: Promise.resolve(null),
  trouble: null,
};

/** Reads a clip's facts, then a picture of it; both are let go when the clip is. */
export function useLookAtClip(adding: ClipToAdd, host: HostClient): ClipLook {
  const [look, setLook] = useState<ClipLook>(nothingYet);
  useEffect(() => {
    const leaving = new AbortController();
    let address: string | null = null;
    setLook(nothingYet);
    const start = async (): Promise<void> => {
      const facts = await factsOf(adding, host, leaving.signal);
      if (leaving.signal.aborted) return;
      if (!facts.ok) {
        setLook({ ...nothingYet, trouble: facts.error });
        return;
      }
      const thumbnail = pictureOf(adding, host, leaving.signal);
      const seen = { facts: facts.value, thumbnail, trouble: null };
      setLook({ ...seen, picture: null });
      const blob = await thumbnail;
      if (leaving.signal.aborted || !blob) return;
      address = URL.createObjectURL(blob);
      setLook({ ...seen, picture: address });
    };
    void start();
    return () => {
      leaving.abort();
      if (address) URL.revokeObjectURL(address);
    };
  }, [adding, host]);
  return look;
}
