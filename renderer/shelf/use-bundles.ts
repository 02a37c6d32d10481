import { useCallback, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { Result } from '#core/host-contract/host-error';
import { type ArrivedBundle, arrivedBundleSchema } from '#core/host-contract/operations/bundle-operations';
import { followJob } from '../host/follow-job';
import type { HostClient } from '../host/host-client';

type BundleState =
  | { readonly kind: 'none' }
  | { readonly kind: 'checking'; readonly name: string }
  | { readonly kind: 'arrived'; readonly bundle: ArrivedBundle }
  | { readonly kind: 'refused'; readonly name: string; readonly words: string };

export interface Bundles {
  readonly state: BundleState;
  /** Takes the bundles out of dropped, picked or opened files and hands the rest, film, on. */
  take(files: readonly Incoming[]): void;
  keep(as: 'new' | 'both' | 'replace'): Promise<void>;
  leave(): void;
}

/** A bundle that lies on this computer and was opened with Submark. */
export interface BundleAtPlace {
  readonly path: string;
  readonly name: string;
}
type Incoming = File | BundleAtPlace;

export const isBundle = ({ name }: { readonly name: string }): boolean => /\.zip$/i.test(name);

/** Swim bundles on their way to the shelf: one is checked and asked about at a time, others wait. */
export function useBundles(
  host: HostClient,
  addClips: (files: readonly File[]) => void,
  onKept: (swimId: string) => void,
): Bundles {
  const [state, setState] = useState<BundleState>({ kind: 'none' });
  const [waiting, setWaiting] = useState<readonly Incoming[]>([]);

  const check = useCallback(
    async (file: Incoming): Promise<void> => {
      setState({ kind: 'checking', name: file.name });
      const sent = await (file instanceof File ? host.sendBundle(file) : openBundle(host, file.path));
      if (sent.ok) return setState({ kind: 'arrived', bundle: sent.value });
      const { what, todo } = errorWords(sent.error);
      return setState({ kind: 'refused', name: file.name, words: `${what} ${todo}` });
    },
    [host],
  );
  const next = (): void => {
    const [first, ...rest] = waiting;
    setWaiting(rest);
    if (first) void check(first);
    else setState({ kind: 'none' });
  };
  return {
    state,
    take: useCallback(
      (files) => {
        const clips = files.filter((file): file is File => file instanceof File && !isBundle(file));
        if (clips.length > 0) addClips(clips);
        const [first, ...rest] = files.filter(isBundle);
        if (!first) return;
        if (state.kind === 'none') {
          setWaiting(rest);
          void check(first);
        } else setWaiting((before) => [...before, first, ...rest]);
      },
      [addClips, check, state.kind],
    ),
    async keep(as) {
      if (state.kind !== 'arrived') return;
      const kept = await host.call('bundle/keep', { bundleId: state.bundle.bundleId, as });
      if (!kept.ok) {
        const { what, todo } = errorWords(kept.error);
        setState({ kind: 'refused', name: state.bundle.clipName, words: `${what} ${todo}` });
        return;
      }
      onKept(kept.value.swimId);
      next();
    },
    leave() {
      if (state.kind === 'arrived') void host.call('bundle/discard', { bundleId: state.bundle.bundleId });
      next();
    },
  };
}

async function openBundle(host: HostClient, path: string): Promise<Result<ArrivedBundle>> {
  const started = await host.call('bundle/open', { path });
  if (!started.ok) return started;
  return followJob(host, started.value.jobId, {
    result: arrivedBundleSchema,
    signal: new AbortController().signal,
    onProgress: () => undefined,
  });
}
