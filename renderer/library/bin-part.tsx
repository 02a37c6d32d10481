import { useCallback, useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { BinContent } from '#core/host-contract/operations/upkeep-operations';
import { ConfirmDialog } from '../ui/confirm-dialog';
import type { Say } from '../ui/notices';
import { cardWords } from '#core/swim-file/card-words';
import type { HostClient } from '../host/host-client';
import { bytesWords } from '../swims/fact-words';

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
    if (done.ok) say(`${words} is back.`);
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
    if (done.ok) say(`The bin is empty; ${bytesWords(done.value.bytes)} given back.`);
    await look();
    if (!done.ok) setTrouble(done.error);
    onChanged();
  };
  const count = bin ? bin.swims.length + bin.plans.length : 0;
  return (
    <section className="upkeep upkeep-wide" aria-label="Bin">
      <h2>Bin</h2>
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {bin && count === 0 && (
        <p>Nothing is in the bin. What you move there from the shelf, the sets or the trials waits here.</p>
      )}
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
                      {card ? cardWords(card).facts[0] : 'its file can’t be read'} · {marks} marks ·{' '}
                      {bytesWords(bytes)}
                    </small>
                  </span>
                  <button
                    type="button"
                    onClick={() => void restore('swim', id, words)}
                    aria-label={`Put back ${words}`}
                  >
                    Put back
                  </button>
                </li>
              );
            })}
            {bin.plans.map(({ kind, id, title }) => {
              const words = title || `A ${kind} without a title`;
              return (
                <li key={`${kind} ${id}`}>
                  <span>
                    <strong>{words}</strong>
                    <small>{kind}</small>
                  </span>
                  <button
                    type="button"
                    onClick={() => void restore(kind, id, words)}
                    aria-label={`Put back ${words}`}
                  >
                    Put back
                  </button>
                </li>
              );
            })}
          </ul>
          <button type="button" className="danger" onClick={() => setAsks(true)}>
            Empty the bin…
          </button>
        </>
      )}
      {asks && (
        <ConfirmDialog
          title="Empty the bin?"
          words={`${count} ${count === 1 ? 'thing is' : 'things are'} removed for good, with clips and marks. This can’t be undone.`}
          yes="Remove for good"
          no="Keep the bin"
          onAnswer={(yes) => {
            setAsks(false);
            if (yes) void empty();
          }}
        />
      )}
    </section>
  );
}
