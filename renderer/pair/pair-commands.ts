import type { PairMode } from '#core/compare/pair-clock';
import type { Command } from '../ui/command';
import type { PairSession } from './pair-session';
import { goToEnd, goToLock, lockHere, setStretch, stepPair, stepToMark } from './pair-steps';
import { type Which, withEach } from './pair-view';

export const modeWords: Readonly<Record<PairMode, string>> = {
  time: 'true time',
  cycle: '% of cycle',
  free: 'free',
};

const nextLay = { none: 'hip', hip: 'shoulder', shoulder: null } as const;

/** Whether both swims can run in percent of the cycle; without, the coach is told what is missing. */
export function chooseMode(session: PairSession, mode: PairMode, cyclic: boolean): void {
  if (mode === 'cycle' && !cyclic) {
    session.say('Percent of the cycle needs two hand entries or two kick tops in each swim');
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
    step('frame-back', 'One frame back', 'ArrowLeft', -1),
    step('frame-on', 'One frame on', 'ArrowRight', 1),
    step('frames-back', 'Ten frames back', 'Shift+ArrowLeft', -10),
    step('frames-on', 'Ten frames on', 'Shift+ArrowRight', 10),
    view('mark-before', 'Previous mark', ['ArrowUp'], () => stepToMark(session, -1)),
    view('mark-after', 'Next mark', ['ArrowDown'], () => stepToMark(session, 1)),
    view('first', 'Start of the stretch', ['Home'], () => goToEnd(session, 'first')),
    view('last', 'End of the stretch', ['End'], () => goToEnd(session, 'last')),
    {
      ...view('play', 'Play or stop', ['Space'], () => session.view.setState({ playing: !state().playing })),
      told: ['Space'],
    },
    view('step-a', 'Step by A', ['a'], () => chooseLead(session, 0)),
    view('step-b', 'Step by B', ['b'], () => chooseLead(session, 1)),
    view('swap', 'A and B change places', ['x'], reach.swap),
    view('in-time', 'Run together in true time', ['t'], () => chooseMode(session, 'time', true)),
    view('in-cycle', 'Run together in % of the cycle', ['c'], () =>
      chooseMode(session, 'cycle', reach.cyclic()),
    ),
    view('free', 'Run free of each other', ['f'], () => chooseMode(session, 'free', true)),
    view('lock', 'Lock both where they stand', ['l'], () => lockHere(session)),
    view('to-lock', 'Go to the locked moment', ['g'], () => goToLock(session)),
    view('stretch-from', 'Stretch begins here', ['['], () => setStretch(session, 'first')),
    view('stretch-to', 'Stretch ends here', [']'], () => setStretch(session, 'last')),
    view('stretch-all', 'Whole clip again', ['w'], () => setStretch(session, null)),
    view('mirror', 'Mirror the stage that steps', ['m'], () => {
      const { lead, mirrored } = state();
      session.view.setState({ mirrored: withEach(mirrored, lead, !mirrored[lead]) });
    }),
    view('same-length', 'Same body length', ['s'], () =>
      session.view.setState({ sameLength: !state().sameLength }),
    ),
    view('lay', 'Lay B’s body line on A: hip, shoulder, off', ['o'], () => {
      const { lay } = state();
      session.view.setState({ lay: nextLay[lay ?? 'none'] });
    }),
    view('differences', 'Show or hide the differences', ['d'], () =>
      session.view.setState({ showTable: !state().showTable }),
    ),
    view('zoom-in', 'Zoom in', ['+', 'Shift++', '='], () => reach.zoom(1.5)),
    view('zoom-out', 'Zoom out', ['-'], () => reach.zoom(1 / 1.5)),
    view('zoom-fit', 'Whole picture', ['0'], () => reach.zoom(null)),
    { id: 'still', label: 'Save a still of both', keys: ['i'], kind: 'never', run: reach.exportStill },
    { id: 'video', label: 'Save a video', keys: ['v'], kind: 'never', run: reach.exportVideo },
  ];
}
