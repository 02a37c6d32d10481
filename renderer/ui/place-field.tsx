import { useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { WantedPlace } from '#core/host-contract/operations/place-operations';
import type { HostClient } from '../host/host-client';
import './place-field.css';
import { uiWords } from '#core/words/ui';

interface Props {
  readonly host: HostClient;
  readonly label: string;
  readonly wanted: WantedPlace;
  readonly placeholder?: string;
  readonly value: string;
  readonly onChange: (path: string) => void;
}

/** A path as a coach may paste it: file managers copy one with quotes around it. */
export const barePath = (typed: string): string => typed.trim().replace(/^(["'])(.*)\1$/, '$2');

/** A place on this computer: by its path, or pointed at in the system's own dialog where the program has one. */
export function PlaceField({ host, label, wanted, placeholder, value, onChange }: Props) {
  const [trouble, setTrouble] = useState('');
  const pick = async (): Promise<void> => {
    const picked = await host.call('place/pick', { wanted });
    setTrouble(picked.ok ? '' : errorWords(picked.error).what);
    if (picked.ok && picked.value.path) onChange(picked.value.path);
  };
  return (
    <div className="place-field">
      <label className="path-field">
        {label}
        <input
          required
          maxLength={4096}
          spellCheck={false}
          autoCapitalize="off"
          autoComplete="off"
          placeholder={placeholder}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      </label>
      {host.transport === 'ipc' && (
        <button type="button" aria-label={uiWords('choose', { label })} onClick={() => void pick()}>
          {uiWords('chooseMore')}
        </button>
      )}
      {trouble && <p role="alert">{trouble}</p>}
    </div>
  );
}
