import type { Result } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { WantedPlace } from '#core/host-contract/operations/place-operations';
import type { WindowFace, WindowRequest } from '#core/host-contract/operations/window-operations';

/** What only the program around a host can do. */
export interface Surroundings {
  /** The system's own dialog for files and folders; null answer: the coach chose nothing. */
  readonly pickPlace: (wanted: WantedPlace) => Promise<string | null>;
  /** Puts a host on another library in the place of this one. */
  readonly openLibrary: (path: string) => Promise<Result<OperationOutput<'library/switch'>>>;
  /** The window that holds the page: takes what the page tells it, and says what it wants of the page. */
  readonly window: {
    show(face: WindowFace): void;
    next(after: number): Promise<readonly WindowRequest[]>;
  };
  /** Hears of the host's own long work: share done of each piece that is running, null where it can't be told. */
  readonly onWork: (shares: readonly (number | null)[]) => void;
}
