import { useCallback, useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { Clash, ClashKind, DocumentVersion } from '#core/host-contract/operations/clash-operations';
import { dayWords } from '#core/swim-file/card-words';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import { libraryWords } from '#core/words/library';

const kindWords: Readonly<Record<ClashKind, string>> = {
  squad: libraryWords('squad'),
  coach: libraryWords('yourMarkingError'),
  drills: libraryWords('yourDrillsPatterns'),
  practice: libraryWords('practice'),
  trial: libraryWords('trial'),
};

/** Lists of the documents, and their other fields, as the coach knows them. */
const fieldWords: Readonly<Record<string, string>> = {
  swimmers: 'swimmers',
  remarkings: libraryWords('marksMadeAgain'),
  drills: 'drills',
  patterns: 'patterns',
  items: 'items',
  log: libraryWords('repeatsLogged'),
  swimmerIds: 'swimmers',
  rows: 'repeats',
  readings: libraryWords('readingsAsked'),
  factor: libraryWords('whatCompared'),
  plan: libraryWords('plannedOrder'),
  poolMetres: libraryWords('poolLength'),
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
        {libraryWords('changed', { format: instant.format(new Date(version.changedAt)) })}
        {differs &&
          (differs.length > 0
            ? ` ${libraryWords('other', { differs: differs.map(fieldWord).join(', ') })}`
            : ` ${libraryWords('saysSame')}`)}
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
    say(take === 'copy' ? libraryWords('otherVersionUse') : libraryWords('versionUseStays'));
    await look();
    onChanged();
  };
  if (!trouble && (found === null || found.clashes.length + found.unreadable.length === 0)) return null;
  return (
    <section className="upkeep upkeep-wide" aria-labelledby="clashes-heading">
      <h2 id="clashes-heading">{libraryWords('changedTwoPlaces')}</h2>
      <p>{libraryWords('theseWereChanged')}</p>
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {found?.clashes.map((clash) => (
        <ul key={`${clash.kind} ${clash.id}`} className="versions" aria-label={kindWords[clash.kind]}>
          <li>
            <strong>{libraryWords('use', { kind: kindWords[clash.kind] })}</strong>
            {clash.inUse ? (
              <VersionWords version={clash.inUse} />
            ) : (
              <span>{libraryWords('removedHere')}</span>
            )}
          </li>
          {clash.copies.map((copy) => (
            <li key={copy.name}>
              <strong>{libraryWords('keptBeside')}</strong>
              <VersionWords version={copy} differs={copy.differs} />
              <div className="versions-foot">
                <button type="button" onClick={() => void settle(clash, copy.name ?? '', 'copy')}>
                  {libraryWords('takeOne')}
                </button>
                <button type="button" onClick={() => void settle(clash, copy.name ?? '', 'in-use')}>
                  {clash.inUse ? libraryWords('keepOneUse') : libraryWords('leaveRemoved')}
                </button>
              </div>
            </li>
          ))}
        </ul>
      ))}
      {found?.unreadable.map((name) => (
        <p key={name} className="caution">
          {libraryWords('noVersionCan', { name })}
        </p>
      ))}
    </section>
  );
}
