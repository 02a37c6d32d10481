import { failure, type HostErrorCode, type Result } from '#core/host-contract/host-error';

const codes: Readonly<Record<string, HostErrorCode>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EROFS: 'read-only',
  ENOENT: 'not-found',
  ENOTDIR: 'not-found',
};

/** A failed file call as a contract error; anything that is no file error is a bug and is thrown on. */
export function fileFailure(error: unknown, name: string, doing: 'reading' | 'writing'): Result<never> {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  if (typeof code !== 'string' || !/^E[A-Z0-9]+$/.test(code)) throw error;
  return failure(codes[code] ?? (doing === 'reading' ? 'cannot-read' : 'cannot-write'), {
    name,
    system: code,
  });
}
