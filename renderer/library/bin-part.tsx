import { useCallback, useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { BinContent } from '#core/host-contract/operations/upkeep-operations';
import { ConfirmDialog } from '../ui/confirm-dialog';
import type { Say } from '../ui/notices';
import { cardWords } from '#core/swim-file/card-words';
import type { HostClient } from '../host/host-client';
import { bytesWords } from '../swims/fact-words';
import { libraryWords } from '#core/words/library';

interface Props {
  readonly host: HostClient;
  readonly say: Say;
  readonly onChanged: () => void;
}

/** What waits in the bin: put back one by one, or removed for good. */
export function BinPart({ host, say, onChanged }: Props) {
  const [bin, setBin] = useState<BinContent | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [asks, setAsks] = useState(false);
  const look = useCallback(async () => {
    const read = await host.call('bin/list', {});
    if (read.ok) setBin(read.value);
    setTrouble(read.ok ? null : read.error);
  }, [host]);
  useEffect(() => void look(), [look]);
  const restore = async (kind: 'swim' | 'practice' | 'trial', id: string, words: string): Promise<void> => {
    const done = await host.call(`${kind}/restore`, { id });
    if (done.ok) say(libraryWords('back', { words }));
    await look();
    if (!done.ok) setTrouble(done.error);
    onChanged();
  };
  const empty = async (): Promise<void> => {
    if (!bin) return;
    const idsOf = (kind: 'practice' | 'trial'): string[] =>
      bin.plans.filter((each) => each.kind === kind).map(({ id }) => id);
    const done = await host.call('bin/empty', {
      swims: bin.swims.map(({ id }) => id),
      practices: idsOf('practice'),
      trials: idsOf('trial'),
    });
    if (done.ok) say(libraryWords('binEmptyGiven', { bytes: bytesWords(done.value.bytes) }));
    await look();
    if (!done.ok) setTrouble(done.error);
    onChanged();
  };
  const count = bin ? bin.swims.length + bin.plans.length : 0;
  return (
    <section className="upkeep upkeep-wide" aria-label={libraryWords('bin')}>
      <h2>{libraryWords('bin')}</h2>
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {bin && count === 0 && <p>{libraryWords('nothingBinWhat')}</p>}
      {bin && count > 0 && (
        <>
          <ul className="bin-list">
            {bin.swims.map(({ id, card, marks, bytes }) => {
              const words = card ? cardWords(card).title : id;
              return (
                <li key={id}>
                  <span>
                    <strong>{words}</strong>
                    <small>
                      {card ? cardWords(card).facts[0] : libraryWords('itsFileCantRead')}{' '}
                      {libraryWords('marks', { marks, bytes: bytesWords(bytes) })}
                    </small>
                  </span>
                  <button
                    type="button"
                    onClick={() => void restore('swim', id, words)}
                    aria-label={libraryWords('putBack', { words })}
                  >
                    {libraryWords('putBack2')}
                  </button>
                </li>
              );
            })}
            {bin.plans.map(({ kind, id, title }) => {
              const words = title || libraryWords('withoutTitle', { kind });
              return (
                <li key={`${kind} ${id}`}>
                  <span>
                    <strong>{words}</strong>
                    <small>{kind}</small>
                  </span>
                  <button
                    type="button"
                    onClick={() => void restore(kind, id, words)}
                    aria-label={libraryWords('putBack', { words })}
                  >
                    {libraryWords('putBack2')}
                  </button>
                </li>
              );
            })}
          </ul>
          <button type="button" className="danger" onClick={() => setAsks(true)}>
            {libraryWords('emptyBin')}
          </button>
        </>
      )}
      {asks && (
        <ConfirmDialog
          title={libraryWords('emptyBin2')}
          words={libraryWords('thingsRemovedGood', { count })}
          yes={libraryWords('removeGood')}
          no={libraryWords('keepBin')}
          onAnswer={(yes) => {
            setAsks(false);
            if (yes) void empty();
          }}
        />
      )}
    </section>
  );
}
