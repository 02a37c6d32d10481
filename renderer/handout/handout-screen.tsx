import { useCallback, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { exportSource } from '#core/exporting/export-source';
import { firstHandout } from '#core/handout/first-handout';
import type { Handout } from '#core/handout/handout-file';
import type { HostError } from '#core/host-contract/host-error';
import { OpeningFailed } from '../ui/opening-failed';
import type { ScreenProps } from '../ui/screen-props';
import { OpenSwimContext, useOpenSwim } from '../open-swim/open-swim';
import { createOpenSwim, type CreatedOpenSwim } from '../open-swim/create-open-swim';
import { readNothing } from '../open-swim/readings-reader';
import { createSwimJournal } from '../open-swim/swim-journal';
import { openFrameSource } from '../video/open-frame-source';
import { HandoutDesk } from './handout-desk';
import { type HandoutLetters, loadLetters } from './handout-letters';
import { openHandout, type OpenHandout } from './open-handout';
import './handout.css';
import { handoutWords } from '#core/words/handout';

interface Props extends ScreenProps {
  readonly swimId: string;
}

type Opening =
  | { readonly kind: 'opening' }
  | { readonly kind: 'open'; readonly open: CreatedOpenSwim; readonly letters: HandoutLetters }
  | { readonly kind: 'failed'; readonly error: HostError };

/** Opens a swim for its handout: the same session the bench has, so that readings and film are the same. */
export function HandoutScreen({ swimId, host, say, go }: Props) {
  const [opening, setOpening] = useState<Opening>({ kind: 'opening' });
  useEffect(() => {
    const leaving = new AbortController();
    let open: CreatedOpenSwim | null = null;
    const start = async (): Promise<void> => {
      const result = await createOpenSwim({
        host,
        journal: createSwimJournal(window.localStorage),
        swimId,
        startReader: readNothing,
        openFrameSource,
        say,
        signal: leaving.signal,
      });
      if (!result.ok) {
        if (!leaving.signal.aborted) setOpening({ kind: 'failed', error: result.error });
        return;
      }
      open = result.value;
      const letters = await loadLetters();
      if (leaving.signal.aborted) {
        await open.close();
        return;
      }
      setOpening({ kind: 'open', open, letters });
      await open.session.keeper.open(open.opened.clipStatus);
    };
    void start();
    return () => {
      leaving.abort();
      void open?.close();
      setOpening({ kind: 'opening' });
    };
  }, [swimId, host, say]);
  const toBench = useCallback(() => go({ screen: 'bench', ids: [swimId] }), [go, swimId]);

  if (opening.kind === 'failed')
    return <OpeningFailed error={opening.error} onShelf={() => go({ screen: 'shelf', ids: [] })} />;
  if (opening.kind === 'opening')
    return <output className="bench-opening">{handoutWords('openingSwim')}</output>;
  return (
    <OpenSwimContext value={opening.open.session}>
      <OpenedHandout letters={opening.letters} onLeave={toBench} />
    </OpenSwimContext>
  );
}

/** Reads what was chosen for the handout, once it is known who swims: targets choose the first readings. */
function OpenedHandout({
  letters,
  onLeave,
}: {
  readonly letters: HandoutLetters;
  readonly onLeave: () => void;
}) {
  const session = useOpenSwim();
  const { swimmer, markingError } = useStore(session.known);
  const squadRead = useStore(session.squad, (state) => state.squad !== null);
  const [opened, setOpened] = useState<OpenHandout | HostError | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: opened once; a later change of the swimmer chooses nothing anew
  useEffect(() => {
    if (!squadRead) return;
    let left = false;
    let open: OpenHandout | null = null;
    const swim = session.document.swim();
    const first = (): Handout => firstHandout(exportSource(swim, { swimmer, markingError }), usualPaper());
    void openHandout(session.host, swim.id, first).then((result) => {
      if (result.ok) open = result.value;
      if (left) void open?.close();
      else setOpened(result.ok ? result.value : result.error);
    });
    return () => {
      left = true;
      void open?.close();
      setOpened(null);
    };
  }, [session, squadRead]);
  if (opened === null) return <output className="bench-opening">{handoutWords('openingHandout')}</output>;
  if ('code' in opened) return <OpeningFailed error={opened} onShelf={onLeave} />;
  return <HandoutDesk open={opened} letters={letters} onLeave={onLeave} />;
}

/** Letter where the machine's region prints on it, A4 elsewhere; common practice, no source. */
function usualPaper(): 'a4' | 'letter' {
  const { region } = new Intl.Locale(navigator.language);
  return ['US', 'CA', 'MX', 'PH', 'CL', 'CO', 'VE'].includes(region ?? '') ? 'letter' : 'a4';
}
