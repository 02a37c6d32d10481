import { eventKinds } from '#core/marks/event-kind';
import type { Command } from '../ui/command';
import { eventWords } from '#core/marks/mark-words';
import { nothingSelected } from '../open-swim/view-store';
import type { Size } from '../open-swim/stage-view';
import {
  backOne,
  copyLastForward,
  endBodyLine,
  leaveOutNext,
  startBodyLine,
} from '../stage/tools/body-line-tool';
import { enterAtCrosshair } from '../stage/tools/crosshair';
import { endLine } from '../stage/tools/line-tool';
import { endPoints, takeBackPoint } from '../stage/tools/points-tool';
import { endStill, takeBackStill } from '../stage/tools/still-tool';
import type { OpenSwim } from '../open-swim/open-swim';
import { endPass, passBack, passOn, startPass } from '../open-swim/guided-pass';
import { askAgain, canSayMore, markHere } from '../open-swim/marking';
import { type BenchReach, leavingCommands } from './leaving-commands';
import { lookingCommands } from './looking-commands';
import { padKeys } from './pad-keys';
import { sceneCommands } from './scene-commands';
import { nudgeEvent, removeSelected, selectedEvent } from '../open-swim/selection-actions';
import { goTo } from '../open-swim/stepping';
import { walkingCommands } from './walking-commands';
import { benchWords } from '#core/words/bench';

/** Everything on the bench that has a key. Of commands that share a key the first enabled one runs. */
export function benchCommands(
  session: OpenSwim,
  reach: BenchReach & { readonly stageSize: () => Size },
): readonly Command[] {
  const { view, document } = session;
  const state = () => view.getState();

  const back = (way: 'undo' | 'redo'): void => {
    const done = document[way]();
    if (!done) return;
    if (done.frame !== null) goTo(session, done.frame);
    session.say(`${way === 'undo' ? benchWords('undone') : benchWords('doneAgain')}: ${done.name}`);
  };
  const putAway = (): void => {
    const { question, tool, selection, litReading, crosshair, asksCamera } = state();
    if (question) view.setState({ question: null });
    else if (crosshair) view.setState({ crosshair: null });
    else if (asksCamera) view.setState({ asksCamera: false });
    else if (tool === 'body-line') {
      session.follow.setState({ asked: null });
      endBodyLine(session);
    } else if (tool === 'plane' || tool === 'straight') endPoints(session);
    else if (tool === 'still') endStill(session);
    else if (tool !== 'point') endLine(session);
    else if (selection.kind !== 'none') view.setState({ selection: nothingSelected });
    else if (litReading) view.setState({ litReading: null });
    else {
      endPass(session);
      view.setState({ asksTravel: false });
    }
  };

  return [
    ...walkingCommands(session),
    ...eventKinds.map(
      (kind): Command => ({
        id: `mark-${kind}`,
        label: benchWords('mark', { event: eventWords[kind].toLowerCase() }),
        keys: [padKeys[kind]],
        kind: 'undoable',
        run: () => markHere(session, kind),
      }),
    ),
    ...layingCommands(session),
    ...sceneCommands(session),
    {
      id: 'point-back',
      label: benchWords('backLastPoint'),
      keys: ['Backspace'],
      kind: 'view',
      enabled: () => state().draftPoints.length > 0,
      run: () => takeBackPoint(session),
    },
    {
      id: 'still-back',
      label: benchWords('takeBackMark'),
      keys: ['Backspace'],
      kind: 'undoable',
      enabled: () => state().tool === 'still',
      run: () => takeBackStill(session),
    },
    ...chosenMarkCommands(session),
    {
      id: 'remove',
      label: benchWords('removeWhatChosen'),
      keys: ['Delete', 'Backspace'],
      kind: 'undoable',
      enabled: () => state().selection.kind !== 'none',
      run: () => removeSelected(session),
    },
    { id: 'undo', label: benchWords('undo2'), keys: ['$mod+z'], kind: 'never', run: () => back('undo') },
    {
      id: 'redo',
      label: benchWords('redo2'),
      keys: ['$mod+Shift+z', '$mod+Shift+Z', '$mod+y'],
      kind: 'never',
      run: () => back('redo'),
    },
    ...lookingCommands(session, reach.stageSize),
    ...leavingCommands(session, reach),
    { id: 'put-away', label: benchWords('putAway'), keys: ['Escape'], kind: 'view', run: putAway },
  ];
}

/** The body line, and the pass through one stroke. */
function layingCommands(session: OpenSwim): readonly Command[] {
  const state = () => session.view.getState();
  const laying = (): boolean => state().tool === 'body-line';
  return [
    {
      id: 'body-line',
      label: benchWords('layBodyLine'),
      keys: ['b'],
      kind: 'view',
      run: () => (laying() ? endBodyLine(session) : startBodyLine(session)),
    },
    {
      id: 'guided-pass',
      label: benchWords('markOneStroke'),
      keys: ['m'],
      kind: 'view',
      run: () => (state().passStep === null ? startPass(session) : endPass(session)),
    },
    {
      id: 'pass-skip',
      label: benchWords('leaveMomentPass'),
      keys: ['l'],
      kind: 'view',
      enabled: () => state().passStep !== null,
      run: () => passOn(session),
    },
    {
      id: 'pass-back',
      label: benchWords('backMomentBefore'),
      keys: ['Backspace'],
      kind: 'undoable',
      enabled: () => (state().passStep ?? 0) > 0,
      run: () => passBack(session),
    },
    {
      id: 'copy-posture',
      label: benchWords('copyLastBody'),
      keys: ['n'],
      kind: 'undoable',
      run: () => copyLastForward(session),
    },
    {
      id: 'leave-out',
      label: benchWords('pointHidden'),
      keys: ['h'],
      kind: 'undoable',
      enabled: () => laying() && state().nextLandmark !== null,
      run: () => leaveOutNext(session),
    },
    {
      id: 'back-one',
      label: benchWords('backLastPoint'),
      keys: ['Backspace'],
      kind: 'undoable',
      enabled: () => laying() && state().selection.kind === 'none',
      run: () => backOne(session),
    },
    {
      id: 'enter',
      label: benchWords('placeAtCrosshair'),
      keys: ['Enter'],
      kind: 'undoable',
      enabled: () => state().tool !== 'point',
      run: () => enterAtCrosshair(session),
    },
  ];
}

/** What can be done with the mark that is chosen. */
function chosenMarkCommands(session: OpenSwim): readonly Command[] {
  return [
    {
      id: 'event-earlier',
      label: benchWords('chosenMarkOne'),
      keys: [','],
      kind: 'undoable',
      enabled: () => selectedEvent(session) !== null,
      run: () => nudgeEvent(session, -1),
    },
    {
      id: 'event-later',
      label: benchWords('chosenMarkOneFrame'),
      keys: ['.'],
      kind: 'undoable',
      enabled: () => selectedEvent(session) !== null,
      run: () => nudgeEvent(session, 1),
    },
    {
      id: 'say-more',
      label: benchWords('changeWhatChosen'),
      keys: ['k'],
      kind: 'undoable',
      enabled: () => canSayMore(selectedEvent(session)?.kind ?? 'kick-top'),
      run: () => askAgain(session),
    },
  ];
}
