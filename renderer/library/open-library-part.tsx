import { useId, useState } from 'react';
import type { HostClient } from '../host/host-client';
import { barePath, PlaceField } from '../ui/place-field';
import { libraryWords } from '#core/words/library';

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
      <h2 id={heading}>{libraryWords('openAnotherLibrary')}</h2>
      <p>{libraryWords('oneOpenNowStays')}</p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void onOpen(barePath(path));
        }}
      >
        <PlaceField
          host={host}
          label={libraryWords('folderLibrary')}
          wanted="folder"
          placeholder={libraryWords('wholePath')}
          value={path}
          onChange={setPath}
        />
        <button type="submit">{libraryWords('openFolder')}</button>
      </form>
    </section>
  );
}
