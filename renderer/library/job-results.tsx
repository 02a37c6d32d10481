import type { z } from 'zod';
import type {
  backedUpSchema,
  clipsFoundSchema,
  restoredSchema,
} from '#core/host-contract/operations/upkeep-operations';
import { libraryWords } from '#core/words/library';
import { bytesWords } from '../swims/fact-words';
import { rich } from '../ui/rich';

/** What a back-up wrote, and what lies outside it. */
export function BackedUp({ result }: { readonly result: z.infer<typeof backedUpSchema> }) {
  return (
    <>
      {rich(
        libraryWords.parts('filesWrittenRead', {
          files: result.files.toLocaleString(),
          bytes: bytesWords(result.bytes),
          path: result.path,
          code: (inside) => <code>{inside}</code>,
        }),
      )}
      {result.outside.length > 0 && ` ${libraryWords('clipsLieOutside', { outside: result.outside.length })}`}
    </>
  );
}

interface RestoredProps {
  readonly result: z.infer<typeof restoredSchema>;
  readonly onOpen: (path: string) => Promise<unknown>;
}

/** Where a library was unpacked, and a way to open it. */
export function Restored({ result, onOpen }: RestoredProps) {
  return (
    <>
      {rich(
        libraryWords.parts('swimsFiles', {
          swims: result.swims,
          files: result.files.toLocaleString(),
          path: result.path,
          code: (inside) => <code>{inside}</code>,
        }),
      )}{' '}
      <button type="button" onClick={() => void onOpen(result.path)}>
        {libraryWords('openLibrary')}
      </button>
    </>
  );
}

/** Which lost clips were found. */
export function ClipsFound({ result }: { readonly result: z.infer<typeof clipsFoundSchema> }) {
  return (
    <>
      {libraryWords('foundFilesStill', {
        found: result.found.length,
        looked: result.looked.toLocaleString(),
        stillMissing: result.stillMissing,
      })}
      {result.closedFolders > 0 &&
        ` ${libraryWords('foldersCouldNot', { closedFolders: result.closedFolders })}`}
    </>
  );
}
