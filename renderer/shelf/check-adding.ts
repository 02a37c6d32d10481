import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { PicturesChecked } from '#core/host-contract/operations/media-operations';
import { checkPictures } from '../host/check-pictures';
import type { HostClient } from '../host/host-client';
import { checkFilm } from '../video/check-film';
import type { ClipFacts } from '../video/frame-source';
import { type ClipToAdd, inputOf } from './clip-to-add';

/** A look at every picture of a film that is to be added. */
export type FilmCheck =
  | { readonly kind: 'looking'; readonly share: number }
  /** By the host's tools, which see what is broken and patch it up. */
  | ({ readonly kind: 'tools' } & PicturesChecked)
  /** By this window's own decoder: how many pictures it doesn't give. */
  | { readonly kind: 'window'; readonly lost: number };

interface Checking {
  readonly adding: ClipToAdd;
  /** The clip where the host can read it: it lies on this computer, or was sent because this window can't read it. */
  readonly clip: ArrivedClip | null;
  readonly facts: ClipFacts;
  readonly host: HostClient;
  readonly signal: AbortSignal;
  readonly onCheck: (check: FilmCheck | null) => void;
}

/**
 * Looks at every picture while the coach fills in the card. Nothing is sent for it: a film that only this window has in hand
 * is decoded here.
 */
export async function checkAdding({ adding, clip, facts, host, signal, onCheck }: Checking): Promise<void> {
  const { track, fields, table } = facts;
  const looking = { signal, onProgress: (share: number) => onCheck({ kind: 'looking', share }) };
  looking.onProgress(0);
  if (clip) {
    const frames = table.starts.length;
    const film = { of: { clipId: clip.clipId }, track, fields, frames };
    const checked = await checkPictures(host, { ...film, ...looking });
    onCheck(checked.ok ? { kind: 'tools', ...checked.value } : null);
    return;
  }
  try {
    const lost = await checkFilm({ ...inputOf(adding, host), track }, looking);
    onCheck(lost.ok ? { kind: 'window', lost: lost.value } : null);
  } catch (problem) {
    // the card is left or the film added, or the file went away under it, which adding it will tell
    if (!signal.aborted) onCheck(null);
    if (!(problem instanceof Error)) throw problem;
  }
}
