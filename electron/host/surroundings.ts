import type { Result } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { WantedPlace } from '#core/host-contract/operations/place-operations';

/** What only the program around a host can do. */
export interface Surroundings {
  /** The system's own dialog for files and folders; null answer: the coach chose nothing. */
  readonly pickPlace: (wanted: WantedPlace) => Promise<string | null>;
  /** Puts a host on another library in the place of this one. */
  readonly openLibrary: (path: string) => Promise<Result<OperationOutput<'library/switch'>>>;
}
