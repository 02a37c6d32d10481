import type { PairMode } from '#core/compare/pair-clock';
import { keepInViewWords } from '#core/words/keep-in-view';
import type { Command } from '../ui/command';
import { pressKeepInView } from '../open-swim/keep-in-view';
import type { PairSession } from './pair-session';
import { goToEnd, goToLock, lockHere, setStretch, stepPair, stepToMark } from './pair-steps';
import { type Which, withEach } from './pair-view';
import { pairWords } from '#core/words/pair';

export const modeWords: Readonly<Record<PairMode, string>> = {
  time: pairWords('trueTime'),
  cycle: pairWords('cycle'),
  free: 'free',
};

const nextLay = { none: 'hip', hip: 'shoulder', shoulder: null } as const;

/** Whether both swims can run in percent of the cycle; without, the coach is told what is missing. */
export function chooseMode(session: PairSession, mode: PairMode, cyclic: boolean): void {
  if (mode === 'cycle' && !cyclic) {
    session.say(pairWords('percentCycleNeeds'));
    return;
  }
  session.view.setState({ mode, scoreSpan: null, playing: false });
  if (mode !== 'free') stepPair(session, 0);
}

function chooseLead(session: PairSession, lead: Which): void {
  session.view.setState({ lead });
}

/** Everything on the pair that has a key. */
export function pairCommands(
  session: PairSession,
  reach: {
    readonly cyclic: () => boolean;
    readonly zoom: (factor: number | null) => void;
    readonly swap: () => void;
    readonly exportVideo: () => void;
    readonly exportStill: () => void;
  },
): readonly Command[] {
  const view = (id: string, label: string, keys: readonly string[], run: () => void): Command => ({
    id,
    label,
    keys,
    kind: 'view',
    run,
  });
  const state = () => session.view.getState();
  const step = (id: string, label: string, key: string, by: number): Command =>
    view(id, label, [key], () => stepPair(session, by));
  return [
    step('frame-back', pairWords('oneFrameBack'), 'ArrowLeft', -1),
    step('frame-on', pairWords('oneFrame'), 'ArrowRight', 1),
    step('frames-back', pairWords('tenFramesBack'), 'Shift+ArrowLeft', -10),
    step('frames-on', pairWords('tenFrames'), 'Shift+ArrowRight', 10),
    view('mark-before', pairWords('previousMark'), ['ArrowUp'], () => stepToMark(session, -1)),
    view('mark-after', pairWords('nextMark'), ['ArrowDown'], () => stepToMark(session, 1)),
    view('first', pairWords('startStretch'), ['Home'], () => goToEnd(session, 'first')),
    view('last', pairWords('endStretch'), ['End'], () => goToEnd(session, 'last')),
    {
      ...view('play', pairWords('playOrStop'), ['Space'], () =>
        session.view.setState({ playing: !state().playing }),
      ),
      told: ['Space'],
    },
    view('step-a', pairWords('step'), ['a'], () => chooseLead(session, 0)),
    view('step-b', pairWords('stepB'), ['b'], () => chooseLead(session, 1)),
    view('swap', pairWords('bChangePlaces'), ['x'], reach.swap),
    view('in-time', pairWords('runTogetherTrue'), ['t'], () => chooseMode(session, 'time', true)),
    view('in-cycle', pairWords('runTogetherCycle'), ['c'], () =>
      chooseMode(session, 'cycle', reach.cyclic()),
    ),
    view('free', pairWords('runFreeEachOther'), ['f'], () => chooseMode(session, 'free', true)),
    view('lock', pairWords('lockBothWhere'), ['l'], () => lockHere(session)),
    view('to-lock', pairWords('goLockedMoment'), ['g'], () => goToLock(session)),
    view('stretch-from', pairWords('stretchBeginsHere'), ['['], () => setStretch(session, 'first')),
    view('stretch-to', pairWords('stretchEndsHere'), [']'], () => setStretch(session, 'last')),
    view('stretch-all', pairWords('wholeClipAgain'), ['w'], () => setStretch(session, null)),
    view('mirror', pairWords('mirrorStageSteps'), ['m'], () => {
      const { lead, mirrored } = state();
      session.view.setState({ mirrored: withEach(mirrored, lead, !mirrored[lead]) });
    }),
    view('same-length', pairWords('sameBodyLength'), ['s'], () =>
      session.view.setState({ sameLength: !state().sameLength }),
    ),
    view('lay', pairWords('layBsBodyLine'), ['o'], () => {
      const { lay } = state();
      session.view.setState({ lay: nextLay[lay ?? 'none'] });
    }),
    view('differences', pairWords('showOrHideDifferences'), ['d'], () =>
      session.view.setState({ showTable: !state().showTable }),
    ),
    view('zoom-in', pairWords('zoom'), ['+', 'Shift++', '='], () => reach.zoom(1.5)),
    view('zoom-out', pairWords('zoomOut'), ['-'], () => reach.zoom(1 / 1.5)),
    view('keep-in-view', keepInViewWords('command'), ['Shift+F'], () => pressKeepInView(session.swims)),
    view('zoom-fit', keepInViewWords('wholeCommand'), ['0'], () => reach.zoom(null)),
    { id: 'still', label: pairWords('saveStillBoth'), keys: ['i'], kind: 'never', run: reach.exportStill },
    { id: 'video', label: pairWords('saveVideo'), keys: ['v'], kind: 'never', run: reach.exportVideo },
  ];
}
