import type { Command } from '../ui/command';
import { endLine, startLine } from '../stage/tools/line-tool';
import { endPoints, startPoints, straightKey } from '../stage/tools/points-tool';
import { endStill, startStill } from '../stage/tools/still-tool';
import type { OpenSwim } from '../open-swim/open-swim';
import { benchWords } from '#core/words/bench';

/** What ties pixels to the pool. */
export function sceneCommands(session: OpenSwim): readonly Command[] {
  const { view } = session;
  const state = () => view.getState();
  return [
    ...(['level', 'surface', 'scale'] as const).map(
      (item, index): Command => ({
        id: `scene-${item}`,
        label: item === 'scale' ? benchWords('drawKnownLength') : benchWords('drawLine', { item }),
        keys: [String(index + 1)],
        kind: 'view',
        run: () => (state().tool === item ? endLine(session) : startLine(session, item)),
      }),
    ),
    {
      id: 'scene-plane',
      label: benchWords('drawKnownRectangle'),
      keys: ['4'],
      kind: 'view',
      run: () => (state().tool === 'plane' ? endPoints(session) : startPoints(session, 'plane')),
    },
    {
      id: 'scene-straight',
      label: benchWords('drawLineStraight'),
      keys: ['5'],
      kind: 'undoable',
      run: () => straightKey(session),
    },
    {
      id: 'scene-still',
      label: benchWords('markThingStands'),
      keys: ['7'],
      kind: 'view',
      run: () => (state().tool === 'still' ? endStill(session) : startStill(session)),
    },
    {
      id: 'scene-camera',
      label: benchWords('sayHowFarAway'),
      keys: ['6'],
      kind: 'view',
      run: () => view.setState({ asksCamera: !state().asksCamera }),
    },
  ];
}
