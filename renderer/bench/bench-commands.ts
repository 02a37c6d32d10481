import { eventKinds } from '#core/marks/event-kind';
import type { Command } from '../app/command';
import { openRoute } from '../app/use-route';
import { eventWords } from '#core/marks/mark-words';
import { nothingSelected } from '../state/view-store';
import { stagePoint } from '#core/units/brand';
import { fitView, type Size, zoomAt } from '../stage/stage-view';
import {
  backOne,
  copyLastForward,
  endBodyLine,
  leaveOutNext,
  startBodyLine,
} from '../stage/tools/body-line-tool';
import { enterAtCrosshair } from '../stage/tools/crosshair';
import { endLine, startLine } from '../stage/tools/line-tool';
import { endPoints, startPoints, straightKey, takeBackPoint } from '../stage/tools/points-tool';
import type { BenchSession } from './bench-session';
import { endPass, passBack, passOn, startPass } from './guided-pass';
import { askAgain, canSayMore, markHere } from './marking';
import { padKeys } from './pad-keys';
import { nudgeEvent, nudgePoint, pointIsHeld, removeSelected, selectedEvent } from './selection-actions';
import { goTo, goToEnd, goToMark, stepBy } from './stepping';

const nextLower = { score: 'overlaid', overlaid: 'plots', plots: 'score' } as const;

/** Everything on the bench that has a key. Of commands that share a key the first enabled one runs. */
export function benchCommands(
  session: BenchSession,
  reach: {
    readonly openStill: () => void;
    readonly openVideo: () => void;
    readonly openExport: () => void;
    readonly openRemarking: () => void;
    readonly stageSize: () => Size;
  },
): readonly Command[] {
  const { view, document } = session;
  const state = () => view.getState();
  const holding = (): boolean => pointIsHeld(session);
  const stepping = (): boolean => !pointIsHeld(session);
  const laying = (): boolean => state().tool === 'body-line';

  const nudges: Command[] = (
    [
      ['ArrowLeft', -1, 0],
      ['ArrowRight', 1, 0],
      ['ArrowUp', 0, -1],
      ['ArrowDown', 0, 1],
    ] as const
  ).flatMap(([key, dx, dy]) =>
    (
      [
        ['', 1],
        ['Shift+', 10],
        ['Alt+', 0.1],
      ] as const
    ).map(
      ([modifier, pixels]): Command => ({
        id: `point-${key}-${pixels}`,
        label: `Move the point ${pixels} px`,
        keys: [`${modifier}${key}`],
        kind: 'undoable',
        enabled: holding,
        run: () => nudgePoint(session, dx * pixels, dy * pixels),
      }),
    ),
  );

  const step = (id: string, label: string, keys: readonly string[], run: Command['run']): Command => ({
    id,
    label,
    keys,
    kind: 'view',
    enabled: stepping,
    run,
  });

  const zoom = (factor: number): void => {
    const size = reach.stageSize();
    const { width, height } = document.swim().clip;
    const picture = { width, height };
    const shown = state().stage ?? fitView(picture, size);
    view.setState({
      stage: zoomAt(shown, stagePoint(size.width / 2, size.height / 2), factor, picture, size),
    });
  };
  const back = (way: 'undo' | 'redo'): void => {
    const done = document[way]();
    if (!done) return;
    if (done.frame !== null) goTo(session, done.frame);
    session.say(`${way === 'undo' ? 'Undone' : 'Done again'}: ${done.name}`);
  };
  const putAway = (): void => {
    const { question, tool, selection, litReading, crosshair, asksCamera } = state();
    if (question) view.setState({ question: null });
    else if (crosshair) view.setState({ crosshair: null });
    else if (asksCamera) view.setState({ asksCamera: false });
    else if (tool === 'body-line') endBodyLine(session);
    else if (tool === 'plane' || tool === 'straight') endPoints(session);
    else if (tool !== 'point') endLine(session);
    else if (selection.kind !== 'none') view.setState({ selection: nothingSelected });
    else if (litReading) view.setState({ litReading: null });
    else {
      endPass(session);
      view.setState({ asksTravel: false });
    }
  };

  return [
    ...nudges,
    step('frame-back', 'One frame back', ['ArrowLeft'], (held) => stepBy(session, -1, held)),
    step('frame-on', 'One frame on', ['ArrowRight'], (held) => stepBy(session, 1, held)),
    step('frames-back', 'Ten frames back', ['Shift+ArrowLeft'], (held) => stepBy(session, -10, held)),
    step('frames-on', 'Ten frames on', ['Shift+ArrowRight'], (held) => stepBy(session, 10, held)),
    step('mark-before', 'Previous mark', ['ArrowUp'], () => goToMark(session, -1)),
    step('mark-after', 'Next mark', ['ArrowDown'], () => goToMark(session, 1)),
    step('first-frame', 'First frame', ['Home'], () => goToEnd(session, 'first')),
    step('last-frame', 'Last frame', ['End'], () => goToEnd(session, 'last')),
    {
      id: 'play',
      label: 'Play or stop',
      // Space is read where it is let go, because held down it moves the picture
      keys: [],
      told: ['Space'],
      kind: 'view',
      enabled: () => session.film.getState().source !== null,
      run: () => view.setState({ playing: !state().playing }),
    },
    ...eventKinds.map(
      (kind): Command => ({
        id: `mark-${kind}`,
        label: `Mark ${eventWords[kind].toLowerCase()}`,
        keys: [padKeys[kind]],
        kind: 'undoable',
        run: () => markHere(session, kind),
      }),
    ),
    {
      id: 'body-line',
      label: 'Lay the body line',
      keys: ['b'],
      kind: 'view',
      run: () => (laying() ? endBodyLine(session) : startBodyLine(session)),
    },
    {
      id: 'guided-pass',
      label: 'Mark one stroke, moment by moment',
      keys: ['m'],
      kind: 'view',
      run: () => (state().passStep === null ? startPass(session) : endPass(session)),
    },
    {
      id: 'pass-skip',
      label: 'Leave this moment of the pass out',
      keys: ['l'],
      kind: 'view',
      enabled: () => state().passStep !== null,
      run: () => passOn(session),
    },
    {
      id: 'pass-back',
      label: 'Back to the moment before, and mark it again',
      keys: ['Backspace'],
      kind: 'undoable',
      enabled: () => (state().passStep ?? 0) > 0,
      run: () => passBack(session),
    },
    {
      id: 'copy-posture',
      label: 'Copy the last body line',
      keys: ['n'],
      kind: 'undoable',
      run: () => copyLastForward(session),
    },
    {
      id: 'leave-out',
      label: 'This point is hidden',
      keys: ['h'],
      kind: 'undoable',
      enabled: () => laying() && state().nextLandmark !== null,
      run: () => leaveOutNext(session),
    },
    {
      id: 'back-one',
      label: 'Back to the last point',
      keys: ['Backspace'],
      kind: 'undoable',
      enabled: () => laying() && state().selection.kind === 'none',
      run: () => backOne(session),
    },
    {
      id: 'enter',
      label: 'Place at the crosshair',
      keys: ['Enter'],
      kind: 'undoable',
      enabled: () => state().tool !== 'point',
      run: () => enterAtCrosshair(session),
    },
    ...(['level', 'surface', 'scale'] as const).map(
      (item, index): Command => ({
        id: `scene-${item}`,
        label: `Draw the ${item === 'scale' ? 'known length' : `${item} line`}`,
        keys: [String(index + 1)],
        kind: 'view',
        run: () => (state().tool === item ? endLine(session) : startLine(session, item)),
      }),
    ),
    {
      id: 'scene-plane',
      label: 'Draw the known rectangle',
      keys: ['4'],
      kind: 'view',
      run: () => (state().tool === 'plane' ? endPoints(session) : startPoints(session, 'plane')),
    },
    {
      id: 'scene-straight',
      label: 'Draw a line that is straight in the pool; keep it',
      keys: ['5'],
      kind: 'undoable',
      run: () => straightKey(session),
    },
    {
      id: 'scene-camera',
      label: 'Say how far away the camera was',
      keys: ['6'],
      kind: 'view',
      run: () => view.setState({ asksCamera: !state().asksCamera }),
    },
    {
      id: 'point-back',
      label: 'Back to the last point',
      keys: ['Backspace'],
      kind: 'view',
      enabled: () => state().draftPoints.length > 0,
      run: () => takeBackPoint(session),
    },
    {
      id: 'event-earlier',
      label: 'Chosen mark one frame earlier',
      keys: [','],
      kind: 'undoable',
      enabled: () => selectedEvent(session) !== null,
      run: () => nudgeEvent(session, -1),
    },
    {
      id: 'event-later',
      label: 'Chosen mark one frame later',
      keys: ['.'],
      kind: 'undoable',
      enabled: () => selectedEvent(session) !== null,
      run: () => nudgeEvent(session, 1),
    },
    {
      id: 'say-more',
      label: 'Change what the chosen mark says: hand, side or metres',
      keys: ['k'],
      kind: 'undoable',
      enabled: () => canSayMore(selectedEvent(session)?.kind ?? 'kick-top'),
      run: () => askAgain(session),
    },
    {
      id: 'remove',
      label: 'Remove what is chosen',
      keys: ['Delete', 'Backspace'],
      kind: 'undoable',
      enabled: () => state().selection.kind !== 'none',
      run: () => removeSelected(session),
    },
    { id: 'undo', label: 'Undo', keys: ['$mod+z'], kind: 'never', run: () => back('undo') },
    {
      id: 'redo',
      label: 'Redo',
      keys: ['$mod+Shift+z', '$mod+Shift+Z', '$mod+y'],
      kind: 'never',
      run: () => back('redo'),
    },
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
      id: 'pair',
      label: 'Pair this swim with another',
      keys: ['Shift+P'],
      kind: 'view',
      run: () => openRoute({ screen: 'pair', ids: [document.swim().id] }),
    },
    { id: 'video', label: 'Save a video', keys: ['Shift+V'], kind: 'never', run: reach.openVideo },
    { id: 'still', label: 'Save a still', keys: ['i'], kind: 'never', run: reach.openStill },
    {
      id: 'export',
      label: 'Export pictures, data or the swim',
      keys: ['Shift+X'],
      kind: 'never',
      run: reach.openExport,
    },
    {
      id: 'handout',
      label: 'Make the handout for the swimmer',
      keys: ['Shift+H'],
      kind: 'view',
      run: () => openRoute({ screen: 'handout', ids: [document.swim().id] }),
    },
    {
      id: 'mark-again',
      label: 'Mark again, without seeing the first marks',
      keys: ['Shift+M'],
      kind: 'view',
      run: reach.openRemarking,
    },
    { id: 'put-away', label: 'Put away', keys: ['Escape'], kind: 'view', run: putAway },
  ];
}
