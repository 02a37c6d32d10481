import { useCallback, useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { SwimVersion } from '#core/host-contract/operations/copy-operations';
import { Dialog } from '../ui/dialog';
import type { Say } from '../ui/notices';
import { cardWords } from '#core/swim-file/card-words';
import type { HostClient } from '../host/host-client';

interface Props {
  readonly swimId: string;
  readonly host: HostClient;
  readonly say: Say;
  readonly onClose: () => void;
}

const instant = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

function marksWords({ eventCount, postureCount, followedCount }: SwimVersion): string {
  const followed = followedCount > 0 ? `, ${followedCount} followed stretches` : '';
  return `${eventCount} events, ${postureCount} body lines${followed}`;
}

/** What the copy's card says otherwise than the shelf's. */
function otherwise(shelf: SwimVersion, copy: SwimVersion): string {
  const fields = (Object.keys(shelf.card) as (keyof SwimVersion['card'])[]).filter(
    (key) => JSON.stringify(shelf.card[key]) !== JSON.stringify(copy.card[key]),
  );
  return fields.length === 0 ? 'The cards say the same.' : `Other on the card: ${fields.join(', ')}.`;
}

/** Two versions of one swim: what each holds, and which is to be the swim. The other stays among its generations. */
export function VersionsDialog({ swimId, host, say, onClose }: Props) {
  const [found, setFound] = useState<OperationOutput<'swim/versions'> | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const look = useCallback(async () => {
    const read = await host.call('swim/versions', { id: swimId });
    if (read.ok) setFound(read.value);
    setTrouble(read.ok ? null : read.error);
    return read;
  }, [host, swimId]);
  useEffect(() => void look(), [look]);
  const [shelf, ...copies] = found?.versions ?? [];
  const settle = async (copy: string, take: 'copy' | 'shelf'): Promise<void> => {
    if (!shelf) return;
    const done = await host.call('swim/settle', { id: swimId, copy, take, baseRevision: shelf.revision });
    if (!done.ok) return setTrouble(done.error);
    say(
      take === 'copy'
        ? 'The other version is on the shelf now; the one before is among its generations.'
        : 'The version on the shelf stays; the other is among its generations.',
    );
    const left = await look();
    if (left.ok && left.value.versions.length < 2) onClose();
  };
  return (
    <Dialog title="Changed in two places" wide onCancel={onClose}>
      <p>
        This swim was changed in two windows or on two computers at the same time. Both versions were kept.
        Choose which is to be the swim; the other stays in its <code>.generations</code> folder.
      </p>
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {shelf && (
        <ul className="versions">
          <li>
            <strong>On the shelf</strong>
            <span>{cardWords(shelf.card).title}</span>
            <span>{marksWords(shelf)}</span>
            <small>changed {instant.format(new Date(shelf.changedAt))}</small>
          </li>
          {copies.map((copy) => (
            <li key={copy.name}>
              <strong>Kept beside it</strong>
              <span>{cardWords(copy.card).title}</span>
              <span>{marksWords(copy)}</span>
              <small>
                changed {instant.format(new Date(copy.changedAt))} · {otherwise(shelf, copy)}
              </small>
              <div className="versions-foot">
                <button type="button" onClick={() => void settle(copy.name ?? '', 'copy')}>
                  Take this one
                </button>
                <button type="button" onClick={() => void settle(copy.name ?? '', 'shelf')}>
                  Keep the one on the shelf
                </button>
              </div>
            </li>
          ))}
        </ul>
      )}
      {(found?.unreadable ?? []).map((name) => (
        <p key={name} className="caution">
          {name} is no version that can be opened; it was left where it lies.
        </p>
      ))}
      <footer className="dialog-foot">
        <button type="button" onClick={onClose}>
          Decide later
        </button>
      </footer>
    </Dialog>
  );
}
