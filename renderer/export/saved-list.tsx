import { useEffect, useMemo } from 'react';
import './saved-list.css';

export interface SavedFile {
  readonly name: string;
  readonly path: string;
  /** Its bytes, when the window has them: then a copy can be had by hand. */
  readonly blob: Blob | null;
}

/** What was saved and where, with a copy of each for a window that is not on the library's own machine. */
export function SavedList({ files }: { readonly files: readonly SavedFile[] }) {
  const listed = useMemo(
    () => files.map((file) => ({ ...file, address: file.blob && URL.createObjectURL(file.blob) })),
    [files],
  );
  useEffect(
    () => () => {
      for (const { address } of listed) if (address) URL.revokeObjectURL(address);
    },
    [listed],
  );
  if (listed.length === 0) return null;
  return (
    <output className="saved-list">
      <b>{listed.length === 1 ? 'Saved' : `Saved, ${listed.length} files`}</b>
      <ul>
        {listed.map(({ name, path, address }) => (
          <li key={path}>
            <span>{path}</span>
            {address && (
              <a href={address} download={name}>
                Download a copy
              </a>
            )}
          </li>
        ))}
      </ul>
    </output>
  );
}
