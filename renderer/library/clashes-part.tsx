import { useCallback, useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { Clash, ClashKind, DocumentVersion } from '#core/host-contract/operations/clash-operations';
import { dayWords } from '#core/swim-file/card-words';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';

const kindWords: Readonly<Record<ClashKind, string>> = {
  squad: 'The squad',
  coach: 'Your marking error',
  drills: 'Your drills and patterns',
  practice: 'Practice',
  trial: 'Trial',
};

/** Lists of the documents, and their other fields, as the coach knows them. */
const fieldWords: Readonly<Record<string, string>> = {
  swimmers: 'swimmers',
  remarkings: 'marks made again',
  drills: 'drills',
  patterns: 'patterns',
  items: 'items',
  log: 'repeats logged',
  swimmerIds: 'swimmers',
  rows: 'repeats',
  readings: 'readings asked for',
  factor: 'what is compared',
  plan: 'planned order',
  poolMetres: 'pool length',
};
const fieldWord = (field: string): string => fieldWords[field] ?? field;

const instant = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

function VersionWords({
  version,
  differs,
}: {
  readonly version: DocumentVersion;
  readonly differs?: readonly string[];
}) {
  const holds = Object.entries(version.holds).map(([field, count]) => `${count} ${fieldWord(field)}`);
  return (
    <>
      <span>{[version.title, version.day && dayWords(version.day)].filter(Boolean).join(' · ')}</span>
      <span>{holds.join(', ')}</span>
      <small>
        changed {instant.format(new Date(version.changedAt))}
        {differs &&
          (differs.length > 0 ? ` · other: ${differs.map(fieldWord).join(', ')}` : ' · says the same')}
      </small>
    </>
  );
}

interface Props {
  readonly host: HostClient;
  readonly say: Say;
  readonly onChanged: () => void;
}

/** Squad, drills, practices and trials that were changed in two places: both versions, and which is to stand. */
export function ClashesPart({ host, say, onChanged }: Props) {
  const [found, setFound] = useState<OperationOutput<'clashes/list'> | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const look = useCallback(async () => {
    const listed = await host.call('clashes/list', {});
    if (listed.ok) setFound(listed.value);
    setTrouble(listed.ok ? null : listed.error);
  }, [host]);
  useEffect(() => void look(), [look]);
  const settle = async ({ kind, id, inUse }: Clash, copy: string, take: 'copy' | 'in-use'): Promise<void> => {
    const baseRevision = inUse?.revision ?? null;
    const done = await host.call('clashes/settle', { kind, id, copy, take, baseRevision });
    if (!done.ok) {
      setTrouble(done.error);
      return;
    }
    say(
      take === 'copy'
        ? 'The other version is in use now; the one before is among its earlier versions.'
        : 'The version in use stays; the other is among its earlier versions.',
    );
    await look();
    onChanged();
  };
  if (!trouble && (found === null || found.clashes.length + found.unreadable.length === 0)) return null;
  return (
    <section className="upkeep upkeep-wide" aria-labelledby="clashes-heading">
      <h2 id="clashes-heading">Changed in two places</h2>
      <p>
        These were changed in two windows or on two computers at the same time. Every version was kept. Choose
        which is to stand; the other stays among its earlier versions.
      </p>
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {found?.clashes.map((clash) => (
        <ul key={`${clash.kind} ${clash.id}`} className="versions" aria-label={kindWords[clash.kind]}>
          <li>
            <strong>{kindWords[clash.kind]}, as in use</strong>
            {clash.inUse ? <VersionWords version={clash.inUse} /> : <span>Removed here.</span>}
          </li>
          {clash.copies.map((copy) => (
            <li key={copy.name}>
              <strong>Kept beside it</strong>
              <VersionWords version={copy} differs={copy.differs} />
              <div className="versions-foot">
                <button type="button" onClick={() => void settle(clash, copy.name ?? '', 'copy')}>
                  Take this one
                </button>
                <button type="button" onClick={() => void settle(clash, copy.name ?? '', 'in-use')}>
                  {clash.inUse ? 'Keep the one in use' : 'Leave it removed'}
                </button>
              </div>
            </li>
          ))}
        </ul>
      ))}
      {found?.unreadable.map((name) => (
        <p key={name} className="caution">
          {name} is no version that can be opened; it was left where it lies.
        </p>
      ))}
    </section>
  );
}
