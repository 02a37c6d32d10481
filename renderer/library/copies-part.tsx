import { useCallback, useEffect, useId, useState } from 'react';
import type { CopiesRoom } from '#core/host-contract/operations/media-operations';
import { errorWords } from '#core/host-contract/error-words';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import { bytesWords } from '../swims/fact-words';
import { libraryWords } from '#core/words/library';

interface Props {
  readonly host: HostClient;
  readonly say: Say;
  readonly stamp: number;
}

const gigabyte = 1e9;
const offered = [0, 5, 10, 20, 50, 100, 200].map((each) => each * gigabyte);
const limitWords = (bytes: number): string =>
  bytes === 0 ? libraryWords('keepNone') : libraryWords('up', { bytes: bytesWords(bytes) });

/** How much room working copies may take; the least lately used go first, and each can be made again. */
export function CopiesPart({ host, say, stamp }: Props) {
  const id = useId();
  const [room, setRoom] = useState<CopiesRoom | null>(null);
  const look = useCallback(async () => {
    const found = await host.call('copy/room', {});
    if (found.ok) setRoom(found.value);
  }, [host]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked again when something was removed
  useEffect(() => void look(), [look, stamp]);
  if (!room) return null;
  const choose = async (limitBytes: number): Promise<void> => {
    const set = await host.call('copy/limit', { limitBytes });
    if (!set.ok) {
      const { what, todo } = errorWords(set.error);
      say(`${what} ${todo}`);
      return;
    }
    setRoom(set.value);
    const gone = room.files - set.value.files;
    if (gone > 0)
      say(libraryWords('workingCopiesRemoved', { gone, bytes: bytesWords(room.bytes - set.value.bytes) }));
  };
  const choices = [...new Set([...offered, room.limitBytes])].sort((a, b) => a - b);
  return (
    <section className="upkeep" aria-label={libraryWords('workingCopies')}>
      <h2>
        {libraryWords('workingCopies')}{' '}
        <small>
          {room.files === 0 ? libraryWords('noneYet') : `${room.files}, ${bytesWords(room.bytes)}`}
        </small>
      </h2>
      <p>{libraryWords('madeFilmWindow')}</p>
      <label htmlFor={id}>
        {libraryWords('roomTheyMayTake')}{' '}
        <select id={id} value={room.limitBytes} onChange={(event) => void choose(Number(event.target.value))}>
          {choices.map((bytes) => (
            <option key={bytes} value={bytes}>
              {limitWords(bytes)}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
}
