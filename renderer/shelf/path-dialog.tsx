import { useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import { Dialog } from '../ui/dialog';
import type { HostClient } from '../host/host-client';
import { barePath, PlaceField } from '../ui/place-field';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly host: HostClient;
  readonly onFound: (clip: ArrivedClip) => void;
  readonly onCancel: () => void;
}

/** Asks where a clip lies, for film too large to copy: it is used from there. */
export function PathDialog({ host, onFound, onCancel }: Props) {
  const [path, setPath] = useState('');
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const find = async (): Promise<void> => {
    const found = await host.call('clip/refer', { path: barePath(path) });
    if (found.ok) onFound(found.value);
    else setTrouble(found.error);
  };
  return (
    <Dialog title={shelfWords('addClipWhere')} onCancel={onCancel}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void find();
        }}
      >
        <p>{shelfWords('nothingCopiedSubmark')}</p>
        {trouble && (
          <p className="message message-trouble" role="alert">
            <strong>{errorWords(trouble).what}</strong>{' '}
            {trouble.code === 'not-allowed' ? shelfWords('giveWholePath') : errorWords(trouble).todo}
          </p>
        )}
        <PlaceField
          host={host}
          label={shelfWords('pathFile')}
          wanted="film"
          value={path}
          onChange={setPath}
        />
        <footer className="dialog-foot">
          <button type="submit" className="primary">
            {shelfWords('lookAt')}
          </button>
          <button type="button" onClick={onCancel}>
            {shelfWords('dontAdd')}
          </button>
        </footer>
      </form>
    </Dialog>
  );
}
