import { useCallback, useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { SwimVersion } from '#core/host-contract/operations/copy-operations';
import { Dialog } from '../ui/dialog';
import type { Say } from '../ui/notices';
import { cardWords } from '#core/swim-file/card-words';
import type { HostClient } from '../host/host-client';
import { shelfWords } from '#core/words/shelf';
import { rich } from '../ui/rich';

interface Props {
  readonly swimId: string;
  readonly host: HostClient;
  readonly say: Say;
  readonly onClose: () => void;
}

const instant = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

function marksWords({ eventCount, postureCount, followedCount }: SwimVersion): string {
  const followed = followedCount > 0 ? shelfWords('followedStretches', { followedCount }) : '';
  return shelfWords('eventsBodyLines', { eventCount, postureCount, followed });
}

/** What the copy's card says otherwise than the shelf's. */
function otherwise(shelf: SwimVersion, copy: SwimVersion): string {
  const fields = (Object.keys(shelf.card) as (keyof SwimVersion['card'])[]).filter(
    (key) => JSON.stringify(shelf.card[key]) !== JSON.stringify(copy.card[key]),
  );
  return fields.length === 0
    ? shelfWords('cardsSaySame')
    : shelfWords('otherCard', { fields: fields.join(', ') });
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
    say(take === 'copy' ? shelfWords('otherVersionShelf') : shelfWords('versionShelfStays'));
    const left = await look();
    if (left.ok && left.value.versions.length < 2) onClose();
  };
  return (
    <Dialog title={shelfWords('changedTwoPlaces')} wide onCancel={onClose}>
      <p>{rich(shelfWords.parts('swimChangedTwo', { code: (inside) => <code>{inside}</code> }))}</p>
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {shelf && (
        <ul className="versions">
          <li>
            <strong>{shelfWords('shelf3')}</strong>
            <span>{cardWords(shelf.card).title}</span>
            <span>{marksWords(shelf)}</span>
            <small>
              {shelfWords('changedFormat', { format: instant.format(new Date(shelf.changedAt)) })}
            </small>
          </li>
          {copies.map((copy) => (
            <li key={copy.name}>
              <strong>{shelfWords('keptBeside')}</strong>
              <span>{cardWords(copy.card).title}</span>
              <span>{marksWords(copy)}</span>
              <small>
                {shelfWords('changed2', {
                  format: instant.format(new Date(copy.changedAt)),
                  otherwise: otherwise(shelf, copy),
                })}
              </small>
              <div className="versions-foot">
                <button type="button" onClick={() => void settle(copy.name ?? '', 'copy')}>
                  {shelfWords('takeOne')}
                </button>
                <button type="button" onClick={() => void settle(copy.name ?? '', 'shelf')}>
                  {shelfWords('keepOneShelf')}
                </button>
              </div>
            </li>
          ))}
        </ul>
      )}
      {(found?.unreadable ?? []).map((name) => (
        <p key={name} className="caution">
          {shelfWords('noVersionCan', { name })}
        </p>
      ))}
      <footer className="dialog-foot">
        <button type="button" onClick={onClose}>
          {shelfWords('decideLater')}
        </button>
      </footer>
    </Dialog>
  );
}
