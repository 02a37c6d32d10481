import { useEffect, useRef } from 'react';
import type { HostClient } from '../host/host-client';
import './saved-list.css';
import { exportWords } from '#core/words/export';

export interface SavedFile {
  readonly name: string;
  readonly path: string;
}

interface Props {
  readonly files: readonly SavedFile[];
  readonly host: Pick<HostClient, 'exportAddress'>;
}

/** What was saved and where, with a copy of each for a window that is not on the library's own machine. */
export function SavedList({ files, host }: Props) {
  const list = useRef<HTMLOutputElement>(null);
  // in a long dialog the list would come below what is in sight
  useEffect(() => {
    if (files.length > 0) list.current?.scrollIntoView({ block: 'nearest' });
  }, [files.length]);
  if (files.length === 0) return null;
  return (
    <output className="saved-list" ref={list}>
      <b>{exportWords('savedFiles', { files: files.length })}</b>
      <ul>
        {files.map(({ name, path }) => (
          <li key={path}>
            <span>{path}</span>
            <a href={host.exportAddress(name)} download={name}>
              {exportWords('downloadCopy')}
            </a>
          </li>
        ))}
      </ul>
    </output>
  );
}
