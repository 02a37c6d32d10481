import type { Command } from '../ui/command';
import { fitView, type Size, zoomAt } from '../open-swim/stage-view';
import { bareKey, sceneKey } from './use-bare-picture';
import type { OpenSwim } from '../open-swim/open-swim';

const nextLower = { score: 'overlaid', overlaid: 'plots', plots: 'score' } as const;

/** How the swim is looked at: nearer, whole, as score or plots. */
export function lookingCommands(session: OpenSwim, stageSize: () => Size): readonly Command[] {
  const { view, document } = session;
  const state = () => view.getState();
  const zoom = (factor: number): void => {
    const size = stageSize();
    const { width, height } = document.swim().clip;
    const picture = { width, height };
    const shown = state().stage ?? fitView(picture, size);
    view.setState({
      stage: zoomAt(shown, { x: size.width / 2, y: size.height / 2 }, factor, picture, size),
    });
  };
  return [
    { id: 'zoom-in', label: 'Zoom in', keys: ['+', 'Shift++', '='], kind: 'view', run: () => zoom(1.5) },
    { id: 'zoom-out', label: 'Zoom out', keys: ['-'], kind: 'view', run: () => zoom(1 / 1.5) },
    {
      id: 'zoom-fit',
      label: 'Whole picture',
      keys: ['0'],
      kind: 'view',
      run: () => view.setState({ stage: null }),
    },
    {
      id: 'score-axis',
      label: 'Seconds or percent of the stroke',
      keys: ['y'],
      kind: 'view',
      run: () => view.setState({ scoreAxis: state().scoreAxis === 'seconds' ? 'stroke' : 'seconds' }),
    },
    {
      id: 'lower',
      label: 'Score, strokes over one another, plots',
      keys: ['l'],
      kind: 'view',
      run: () => view.setState({ lower: nextLower[state().lower] }),
    },
    {
      id: 'angles',
      label: 'Show or hide angles',
      keys: ['v'],
      kind: 'view',
      run: () => view.setState({ showAngles: !state().showAngles }),
    },
    {
      id: 'scene',
      label: 'Show or hide the scene: level, surface, length',
      keys: [sceneKey],
      kind: 'view',
      run: () => view.setState({ showScene: !state().showScene }),
    },
    {
      id: 'bare',
      label: 'Hold: the bare picture',
      // held, not pressed: read by `useBarePicture`
      keys: [],
      told: [bareKey],
      kind: 'view',
      run: () => undefined,
    },
  ];
}
