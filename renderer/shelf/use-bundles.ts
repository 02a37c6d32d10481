import { useCallback, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { ArrivedBundle } from '#core/host-contract/operations/bundle-operations';
import type { HostClient } from '../host/host-client';

export type BundleState =
  | { readonly kind: 'none' }
  | { readonly kind: 'checking'; readonly name: string }
  | { readonly kind: 'arrived'; readonly bundle: ArrivedBundle }
  | { readonly kind: 'refused'; readonly name: string; readonly words: string };

export interface Bundles {
  readonly state: BundleState;
  /** Takes the bundles out of dropped or picked files and hands the rest, film, on. */
  take(files: readonly File[]): void;
  keep(as: 'new' | 'both' | 'replace'): Promise<void>;
  leave(): void;
}

const isBundle = (file: File): boolean => /\.zip$/i.test(file.name);

/** Swim bundles on their way to the shelf: one is checked and asked about at a time, others wait. */
export function useBundles(
  host: HostClient,
  addClips: (files: readonly File[]) => void,
  onKept: (swimId: string) => void,
): Bundles {
  const [state, setState] = useState<BundleState>({ kind: 'none' });
  const [waiting, setWaiting] = useState<readonly File[]>([]);

  const check = useCallback(
    async (file: File): Promise<void> => {
      setState({ kind: 'checking', name: file.name });
      const sent = await host.sendBundle(file);
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
        const clips = files.filter((file) => !isBundle(file));
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
