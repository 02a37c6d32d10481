import { useCallback, useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { ReadingDefinition } from '#core/measures/reading';
import { OpeningFailed } from '../ui/opening-failed';
import type { HostClient } from '../host/host-client';
import type { StartReader } from '../open-swim/readings-reader';
import { createSwimJournal } from '../open-swim/swim-journal';
import type { OpenFrameSource } from '../video/frame-source';
import { Bench } from './bench';
import { OpenSwimContext } from '../open-swim/open-swim';
import { createOpenSwim, type CreatedOpenSwim } from '../open-swim/create-open-swim';
import { RemarkingScreen } from '../remarking/remarking-screen';
import { benchWords } from '#core/words/bench';

export interface BenchParts {
  readonly openFrameSource: OpenFrameSource;
  readonly startReader: StartReader;
  readonly catalogue: readonly ReadingDefinition[];
}

interface Props {
  readonly swimId: string;
  readonly host: HostClient;
  readonly onLeave: () => void;
  readonly say: (words: string) => void;
  readonly parts: BenchParts;
}

type Opening =
  | { readonly kind: 'opening' }
  | { readonly kind: 'open'; readonly open: CreatedOpenSwim }
  | { readonly kind: 'failed'; readonly error: HostError };

/** Opens one swim, keeps it open while it is on screen, and closes it whichever way the coach goes. */
export function OpenedBench({ swimId, host, onLeave, say, parts }: Props) {
  const [opening, setOpening] = useState<Opening>({ kind: 'opening' });
  const [round, setRound] = useState(0);
  const [remarking, setRemarking] = useState(false);
  const remark = useCallback(() => setRemarking(true), []);
  const backToBench = useCallback(() => setRemarking(false), []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round opens the same swim again
  useEffect(() => {
    const leaving = new AbortController();
    let open: CreatedOpenSwim | null = null;
    const start = async (): Promise<void> => {
      const result = await createOpenSwim({
        host,
        journal: createSwimJournal(window.localStorage),
        swimId,
        startReader: parts.startReader,
        say,
        openFrameSource: parts.openFrameSource,
        signal: leaving.signal,
      });
      if (!result.ok) {
        if (!leaving.signal.aborted) setOpening({ kind: 'failed', error: result.error });
        return;
      }
      open = result.value;
      if (leaving.signal.aborted) {
        await open.close();
        return;
      }
      setOpening({ kind: 'open', open });
      if (open.opened.replayed) say(benchWords('changesLastTime'));
      await open.session.keeper.open(open.opened.clipStatus);
    };
    void start();
    return () => {
      leaving.abort();
      void open?.close();
      setOpening({ kind: 'opening' });
    };
  }, [swimId, host, say, parts, round]);

  const again = useCallback(() => setRound((each) => each + 1), []);

  if (opening.kind === 'failed')
    return <OpeningFailed error={opening.error} onAgain={again} onShelf={onLeave} />;
  if (opening.kind === 'opening')
    return <output className="bench-opening">{benchWords('openingSwim')}</output>;
  return (
    <OpenSwimContext value={opening.open.session}>
      {remarking ? (
        <RemarkingScreen onLeave={backToBench} />
      ) : (
        <Bench catalogue={parts.catalogue} onLeave={onLeave} onRelinked={again} onRemark={remark} />
      )}
    </OpenSwimContext>
  );
}
