import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { RemarkingItem } from '#core/uncertainty/remarking-plan';
import type { Command } from '../ui/command';
import { useCommandKeys } from '../ui/use-command-keys';
import { useTip } from '../ui/use-tip';
import { OpenSwimContext, useOpenSwim } from '../open-swim/open-swim';
import { blindSession } from './blind-session';
import { MomentStep } from './moment-step';
import { PointsStep } from './points-step';
import { RemarkingStart } from './remarking-start';
import { RepeatabilityTable } from './repeatability-table';
import { type Remarking, useRemarking } from './use-remarking';
import './remarking.css';

/** The blind pass: in place of the bench, so that nothing of the first marks is anywhere on the screen. */
export function RemarkingScreen({ onLeave }: { readonly onLeave: () => void }) {
  const session = useOpenSwim();
  const pass = useRemarking(session);
  const { phase, item } = pass;
  return (
    <div className="bench remark">
      {phase === 'going' && item ? (
        <Going key={pass.done} pass={pass} item={item} />
      ) : phase === 'results' ? (
        <Results added={pass.added} onLeave={onLeave} />
      ) : phase === 'start' ? (
        <RemarkingStart pass={pass} onLeave={onLeave} />
      ) : (
        <output className="remark-page">Keeping what you marked…</output>
      )}
    </div>
  );
}

function Going({ pass, item }: { readonly pass: Remarking; readonly item: RemarkingItem }) {
  const tip = useTip();
  const session = useOpenSwim();
  const blind = useMemo(() => blindSession(session, item), [session, item]);
  const commands = useMemo(
    (): readonly Command[] => [
      { id: 'remark-skip', label: 'Skip this one', keys: ['x'], kind: 'view', run: pass.skip },
      {
        id: 'remark-again',
        label: 'Back to the one before',
        keys: ['Backspace'],
        kind: 'view',
        run: pass.back,
      },
      {
        id: 'remark-stop',
        label: 'Stop, and go on another day',
        keys: ['Escape'],
        kind: 'view',
        run: pass.stop,
      },
    ],
    [pass],
  );
  useCommandKeys('Mark again', commands);
  return (
    <>
      <header className="bench-bar remark-bar">
        <h1>
          <strong>Mark again</strong>{' '}
          <small>
            {pass.done + 1} of {pass.all}
          </small>
        </h1>
        <progress max={pass.all} value={pass.done} aria-label="How much is done" />
        <button
          type="button"
          onClick={pass.back}
          disabled={pass.done === 0}
          title={tip('remark-again', 'Back to the one before')}
        >
          One back
        </button>
        <button
          type="button"
          onClick={pass.skip}
          title={tip('remark-skip', 'It can’t be told: leave it out')}
        >
          Skip <kbd>X</kbd>
        </button>
        <button
          type="button"
          onClick={pass.stop}
          title={tip('remark-stop', 'Keep what is done; the rest waits')}
        >
          Stop <kbd>Esc</kbd>
        </button>
      </header>
      <div className="remark-middle">
        <OpenSwimContext value={blind}>
          {item.of === 'event' ? (
            <MomentStep item={item} onAnswer={pass.answer} />
          ) : (
            <PointsStep item={item} onAnswer={pass.answer} />
          )}
        </OpenSwimContext>
      </div>
    </>
  );
}

function Results({ added, onLeave }: { readonly added: number; readonly onLeave: () => void }) {
  const session = useOpenSwim();
  const coach = useStore(session.known, (state) => state.coach);
  const { height } = session.document.swim().clip;
  useEffect(() => {
    document.querySelector<HTMLElement>('.remark-page h1')?.focus();
  }, []);
  return (
    <main className="remark-page remark-results">
      <h1 tabIndex={-1}>Your own marking error</h1>
      {added > 0 && (
        <p>
          {added} {added === 1 ? 'pair was' : 'pairs were'} added. A kind with ten pairs or more counts in
          every interval from now on; pairs add up from pass to pass and from swim to swim.
        </p>
      )}
      {coach && <RepeatabilityTable coach={coach} pictureHeight={height} />}
      <p className="caution">
        Pairs of all your passes on all swims, pixels told for this picture of {height} lines. Typical error
        is the standard deviation of one mark: SD of the differences ÷ √2 (Hopkins 2000, Sports Med 30:1–15).
        Least real change is the smallest difference of two marks that is more than marking error, at 95 %:
        1.96 · √2 · SEM (Weir 2005, J Strength Cond Res 19:231–240). Rounding to frames is taken off before it
        is used, and put back for each clip.
      </p>
      <footer className="dialog-foot">
        <button type="button" className="primary" onClick={onLeave}>
          Back to the bench
        </button>
      </footer>
    </main>
  );
}
