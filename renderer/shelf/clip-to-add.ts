import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { HostClient } from '../host/host-client';
import type { ClipInput } from '../video/frame-source';

/** A clip the coach wants on the shelf: a file in hand, or one that stays where it lies on this computer. */
export type ClipToAdd =
  | { readonly kind: 'file'; readonly key: string; readonly file: File }
  | {
      readonly kind: 'referred';
      readonly key: string;
      readonly clip: ArrivedClip;
      /** Copied into the library when it becomes a swim, so that it no longer depends on its place. */
      readonly copied: boolean;
      /** When the file was made, where the window has seen it. */
      readonly made?: number;
    };

export const nameOf = (adding: ClipToAdd): string =>
  adding.kind === 'file' ? adding.file.name : adding.clip.name;

export const bytesOf = (adding: ClipToAdd): number =>
  adding.kind === 'file' ? adding.file.size : adding.clip.fingerprint.bytes;

/** When the clip was made, as far as the file tells; null where only the host can see it. */
export const madeAt = (adding: ClipToAdd): number | null =>
  adding.kind === 'file' ? adding.file.lastModified : (adding.made ?? null);

export const inputOf = (adding: ClipToAdd, host: HostClient): ClipInput =>
  adding.kind === 'file'
    ? { blob: adding.file, name: adding.file.name }
    : { address: host.arrivedAddress(adding.clip.clipId) };
