import type { Result } from '#core/host-contract/host-error';
import type { OperationInput, OperationName, OperationOutput } from '#core/host-contract/operations';
import type { ArrivedBundle } from '#core/host-contract/operations/bundle-operations';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';

/** The window's side of the host contract; one per transport, alike to everything above. */
export interface HostClient {
  readonly transport: 'ipc' | 'loopback';
  /** Input and output are checked against the contract (`sentInput`); an expected failure is a value, a bug throws. */
  call<Name extends OperationName>(
    name: Name,
    input: OperationInput<Name>,
    signal?: AbortSignal,
  ): Promise<Result<OperationOutput<Name>>>;
  /** Where a picked or dropped file lies on the host's own disks; null where the window can't know. */
  pathOf(file: File): string | null;
  /** Addresses of byte streams on the app's own origin (GET, with Range for clips). */
  clipAddress(swimId: string): string;
  copyAddress(swimId: string): string;
  /** The piece of a copy being made that begins with a frame. */
  copyPieceAddress(swimId: string, first: number): string;
  arrivedAddress(clipId: string): string;
  thumbnailAddress(swimId: string): string;
  /** Where the file is that has the first of these letters; not there for letters nobody has. */
  lettersAddress(words: string): string;
  /** Where a file in the library's exports can be had as a download. */
  exportAddress(name: string): string;
  /** Sends a picked or dropped file to the library. Progress runs from 0 to 1. Aborting leaves nothing behind. */
  sendClip(
    file: Blob,
    name: string,
    options: { readonly signal: AbortSignal; readonly onProgress: (share: number) => void },
  ): Promise<Result<ArrivedClip>>;
  /** Sends a swim bundle to be checked; nothing of it is on the shelf before `bundle/keep`. */
  sendBundle(file: Blob): Promise<Result<ArrivedBundle>>;
  sendThumbnail(swimId: string, jpeg: Blob): Promise<Result<null>>;
  /** Saves an export under a free name in the library's export folder; never overwrites. */
  sendExport(name: string, bytes: Blob): Promise<Result<{ readonly name: string; readonly path: string }>>;
}
