import { closeView } from '#core/drawing/picture-view';
import { swimmerWindows } from '#core/drawing/swimmer-windows';
import { keepInViewWords } from '#core/words/keep-in-view';
import type { Command } from '../ui/command';
import { fitView, type Size, zoomAt } from '../open-swim/stage-view';
import { keepInViewStore, pressKeepInView } from '../open-swim/keep-in-view';
import { bareKey, sceneKey } from './use-bare-picture';
import type { OpenSwim } from '../open-swim/open-swim';
import { benchWords } from '#core/words/bench';

const nextLower = { score: 'overlaid', overlaid: 'plots', plots: 'score' } as const;

/** How the swim is looked at: nearer, whole, as score or plots. */
export function lookingCommands(session: OpenSwim, stageSize: () => Size): readonly Command[] {
  const { view, document } = session;
  const state = () => view.getState();
  const zoom = (factor: number): void => {
    const size = stageSize();
    const { width, height } = document.swim().clip;
    const picture = { width, height };
    const { stage, frame, shownFrame } = state();
    const { keep } = keepInViewStore.getState();
    const whole = fitView(picture, size);
    const room = keep ? swimmerWindows(document.swim()).windowOn(shownFrame ?? frame) : null;
    const shown = stage ?? closeView(room, picture, size);
    const middle = { x: size.width / 2, y: size.height / 2 };
    view.setState({ stage: zoomAt(shown, middle, factor, picture, size) ?? (keep ? whole : null) });
  };
  return [
    {
      id: 'zoom-in',
      label: benchWords('zoom'),
      keys: ['+', 'Shift++', '='],
      kind: 'view',
      run: () => zoom(1.5),
    },
    { id: 'zoom-out', label: benchWords('zoomOut'), keys: ['-'], kind: 'view', run: () => zoom(1 / 1.5) },
    {
      id: 'zoom-fit',
      label: keepInViewWords('wholeCommand'),
      keys: ['0'],
      kind: 'view',
      run: () => view.setState({ stage: null }),
    },
    {
      id: 'keep-in-view',
      label: keepInViewWords('command'),
      keys: ['Shift+F'],
      kind: 'view',
      run: () => pressKeepInView([session]),
    },
    {
      id: 'score-axis',
      label: benchWords('secondsOrPercent'),
      keys: ['y'],
      kind: 'view',
      run: () => view.setState({ scoreAxis: state().scoreAxis === 'seconds' ? 'stroke' : 'seconds' }),
    },
    {
      id: 'lower',
      label: benchWords('scoreStrokesOver'),
      keys: ['l'],
      kind: 'view',
      run: () => view.setState({ lower: nextLower[state().lower] }),
    },
    {
      id: 'angles',
      label: benchWords('showOrHideAngles'),
      keys: ['v'],
      kind: 'view',
      run: () => view.setState({ showAngles: !state().showAngles }),
    },
    {
      id: 'scene',
      label: benchWords('showOrHideScene'),
      keys: [sceneKey],
      kind: 'view',
      run: () => view.setState({ showScene: !state().showScene }),
    },
    {
      id: 'bare',
      label: benchWords('holdBarePicture'),
      // held, not pressed: read by `useBarePicture`
      keys: [],
      told: [bareKey],
      kind: 'view',
      run: () => undefined,
    },
  ];
}
