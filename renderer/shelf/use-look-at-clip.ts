import { useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { HostClient } from '../host/host-client';
import type { ClipFacts } from '../video/frame-source';
import type { ClipToAdd } from './clip-to-add';
import { factsOf, pictureOf } from './look-at-clip';

export interface ClipLook {
  readonly facts: ClipFacts | null;
  readonly picture: { readonly blob: Blob; readonly address: string } | null;
  readonly trouble: HostError | null;
}
const nothingYet: ClipLook = { facts: null, picture: null, trouble: null };

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
      setLook({ ...nothingYet, facts: facts.value });
      const blob = await pictureOf(adding, host, leaving.signal);
      if (leaving.signal.aborted || !blob) return;
      address = URL.createObjectURL(blob);
      setLook({ facts: facts.value, picture: { blob, address }, trouble: null });
    };
    void start();
    return () => {
      leaving.abort();
      if (address) URL.revokeObjectURL(address);
    };
  }, [adding, host]);
  return look;
}
