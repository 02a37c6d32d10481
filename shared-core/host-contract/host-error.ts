import { z } from 'zod';

/** Every way a host operation can fail that a coach can meet. A bug is not in here: it throws. */
const hostErrorCodes = [
  'bad-request',
  'not-allowed',
  'not-found',
  'cannot-read',
  'cannot-write',
  'disk-full',
  'read-only',
  'library-gone',
  'not-a-library',
  'swim-damaged',
  'swim-newer-version',
  'squad-damaged',
  'squad-newer-version',
  'file-damaged',
  'file-newer-version',
  'bundle-damaged',
  'conflict',
  'already-there',
  'clip-missing',
  'clip-changed',
  'not-a-video',
  'empty-file',
  'no-video-track',
  'unsupported-codec',
  'not-decodable',
  'encrypted',
  'truncated',
  'unreadable-index',
  'too-large',
  'archive-damaged',
  'no-media-tool',
  'media-tool-failed',
  'copy-differs',
  'timed-out',
  'cancelled',
  'host-unreachable',
  'host-failed',
] as const;
export type HostErrorCode = (typeof hostErrorCodes)[number];

export const hostErrorSchema = z.strictObject({
  code: z.enum(hostErrorCodes),
  /** What the words need: a file name, the version needed, how many bytes are missing. Never a secret. */
  detail: z.record(z.string().max(40), z.union([z.string().max(4096), z.number()])),
});
export type HostError = z.infer<typeof hostErrorSchema>;

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: HostError };

export const success = <T>(value: T): Result<T> => ({ ok: true, value });
export const failure = (code: HostErrorCode, detail: HostError['detail'] = {}): Result<never> => ({
  ok: false,
  error: { code, detail },
});
