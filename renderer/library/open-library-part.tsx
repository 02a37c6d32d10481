import { useId, useState } from 'react';
import type { HostClient } from '../host/host-client';
import { barePath, PlaceField } from '../ui/place-field';

interface Props {
  readonly host: HostClient;
  readonly onOpen: (path: string) => Promise<void>;
}

/** Going over to another library: one of the club's shared disk, a restored one, or a new one. */
export function OpenLibraryPart({ host, onOpen }: Props) {
  const heading = useId();
  const [path, setPath] = useState('');
  return (
    <section className="upkeep" aria-labelledby={heading}>
      <h2 id={heading}>Open another library</h2>
      <p>
        The one open now stays as it is. In a new or empty folder a new library begins. Submark opens the same
        library again at its next start.
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void onOpen(barePath(path));
        }}
      >
        <PlaceField
          host={host}
          label="Folder of the library"
          wanted="folder"
          placeholder="whole path"
          value={path}
          onChange={setPath}
        />
        <button type="submit">Open this folder</button>
      </form>
    </section>
  );
}
