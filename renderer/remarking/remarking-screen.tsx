import { keyCap } from '../ui/key-cap';
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { RemarkingItem } from '#core/uncertainty/remarking-plan';
import type { Command } from '../ui/command';
import { useCommandKeys } from '../ui/use-command-keys';
import { useKeyOf, useTip } from '../ui/use-tip';
import { OpenSwimContext, useOpenSwim } from '../open-swim/open-swim';
import { blindSession } from './blind-session';
import { MomentStep } from './moment-step';
import { PointsStep } from './points-step';
import { RemarkingStart } from './remarking-start';
import { RepeatabilityTable } from './repeatability-table';
import { type Remarking, useRemarking } from './use-remarking';
import './remarking.css';
import { remarkingWords } from '#core/words/remarking';
import { rich } from '../ui/rich';

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
        <output className="remark-page">{remarkingWords('keepingWhatYou')}</output>
      )}
    </div>
  );
}

function Going({ pass, item }: { readonly pass: Remarking; readonly item: RemarkingItem }) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const blind = useMemo(() => blindSession(session, item), [session, item]);
  const commands = useMemo(
    (): readonly Command[] => [
      { id: 'remark-skip', label: remarkingWords('skipOne'), keys: ['x'], kind: 'view', run: pass.skip },
      {
        id: 'remark-again',
        label: remarkingWords('backOneBefore'),
        keys: ['Backspace'],
        kind: 'view',
        run: pass.back,
      },
      {
        id: 'remark-stop',
        label: remarkingWords('stopGoAnother'),
        keys: ['Escape'],
        kind: 'view',
        run: pass.stop,
      },
    ],
    [pass],
  );
  useCommandKeys(remarkingWords('markAgain'), commands);
  return (
    <>
      <header className="bench-bar remark-bar">
        <h1>
          <strong>{remarkingWords('markAgain')}</strong>{' '}
          <small>{remarkingWords('of', { done: pass.done + 1, all: pass.all })}</small>
        </h1>
        <progress max={pass.all} value={pass.done} aria-label={remarkingWords('howMuchDone')} />
        <button
          type="button"
          onClick={pass.back}
          disabled={pass.done === 0}
          title={tip('remark-again', remarkingWords('backOneBefore'))}
        >
          {remarkingWords('oneBack')}
        </button>
        <button type="button" onClick={pass.skip} title={tip('remark-skip', remarkingWords('cantToldLeave'))}>
          {rich(remarkingWords.parts('skipX', { key: keyOf('remark-skip'), kbd: keyCap }))}
        </button>
        <button type="button" onClick={pass.stop} title={tip('remark-stop', remarkingWords('keepWhatDone'))}>
          {rich(remarkingWords.parts('stopEsc', { key: keyOf('remark-stop'), kbd: keyCap }))}
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
      <h1 tabIndex={-1}>{remarkingWords('yourOwnMarking')}</h1>
      {added > 0 && <p>{remarkingWords('pairsWereAdded', { added })}</p>}
      {coach && <RepeatabilityTable coach={coach} pictureHeight={height} />}
      <p className="caution">{remarkingWords('pairsAllYour', { height })}</p>
      <footer className="dialog-foot">
        <button type="button" className="primary" onClick={onLeave}>
          {remarkingWords('backBench')}
        </button>
      </footer>
    </main>
  );
}
