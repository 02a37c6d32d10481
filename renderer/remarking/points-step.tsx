import { keyCap } from '../ui/key-cap';
import { useEffect, useMemo } from 'react';
import { landmarkWords } from '#core/marks/mark-words';
import type { RemarkingAnswer } from '#core/uncertainty/remarking-entries';
import type { PointsItem } from '#core/uncertainty/remarking-plan';
import { frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';
import type { Command } from '../ui/command';
import { useCommandKeys } from '../ui/use-command-keys';
import { useKeyOf, useTip } from '../ui/use-tip';
import { playCommand } from './play-command';
import { type OpenSwim, clockOf, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { nudgePoint, pointIsHeld } from '../open-swim/selection-actions';
import { useSpaceToPlay } from '../film/use-space-to-play';
import { Stage } from '../stage/stage';
import { guideOn, leaveOutNext } from '../stage/tools/body-line-tool';
import { enterAtCrosshair } from '../stage/tools/crosshair';
import { postureOn } from '../open-swim/selectors';
import { nothingSelected } from '../open-swim/view-store';
import { remarkingWords } from '#core/words/remarking';
import { rich } from '../ui/rich';

interface Props {
  readonly item: PointsItem;
  readonly onAnswer: (answer: RemarkingAnswer) => void;
}

const ways = [
  ['ArrowLeft', -1, 0],
  ['ArrowRight', 1, 0],
  ['ArrowUp', 0, -1],
  ['ArrowDown', 0, 1],
] as const;
const lengths = [
  ['', 1],
  ['Shift+', 10],
  ['Alt+', 0.1],
] as const;

/** Half of the loop around a picture, real seconds. Our default: about one kick to each side. */
const aroundSeconds = 0.4;

function loopAround(session: OpenSwim, frame: number): { readonly first: number; readonly last: number } {
  const clock = clockOf(session.document.swim());
  const time = realTimeOf(clock, frame);
  return {
    first: frameAtRealTime(clock, time - aroundSeconds),
    last: frameAtRealTime(clock, time + aroundSeconds),
  };
}

/** The points of one frame to lay again, from fingertip to toe, on a bare picture. */
export function PointsStep({ item, onAnswer }: Props) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const next = useView((state) => state.nextLandmark);
  const posture = useSwim((swim) => postureOn(swim, item.frame));
  const laid = item.points.filter(({ landmark }) => posture?.points[landmark]).length;
  const touched = useMemo(
    () => Object.keys(posture?.points ?? {}).length > 0 || next === null,
    [posture, next],
  );

  const playing = useView((state) => state.playing);
  const loop = useMemo(() => loopAround(session, item.frame), [session, item]);
  useSpaceToPlay(loop);
  const play = (on: boolean): void => {
    // the points belong to one picture: the loop is for looking, and always ends on it
    session.view.setState(on ? { playing: true } : { playing: false, frame: item.frame, towards: 0 });
  };
  useEffect(() => {
    if (!playing && session.view.getState().frame !== item.frame)
      session.view.setState({ frame: item.frame, towards: 0 });
  }, [session, item, playing]);
  useEffect(() => () => session.view.setState({ playing: false }), [session]);

  const { keep, back, commands } = useMemo(() => {
    const done = (): void => {
      onAnswer({ points: postureOn(session.document.swim(), item.frame)?.points ?? {} });
    };
    const undo = (): void => {
      session.document.undo();
      session.view.setState({ selection: nothingSelected });
      guideOn(session);
    };
    const nudges = ways.flatMap(([key, dx, dy]) =>
      lengths.map(
        ([modifier, pixels]): Command => ({
          id: `remark-${key}-${pixels}`,
          label: remarkingWords('movePointPx', { pixels }),
          keys: [`${modifier}${key}`],
          kind: 'undoable',
          enabled: () => pointIsHeld(session),
          run: () => nudgePoint(session, dx * pixels, dy * pixels),
        }),
      ),
    );
    const enter = (): void => {
      if (session.view.getState().nextLandmark) enterAtCrosshair(session);
      else done();
    };
    const hidden = (): void => leaveOutNext(session);
    const others: Command[] = [
      playCommand(session, remarkingWords('playAroundPicture')),
      {
        id: 'remark-hidden',
        label: remarkingWords('pointHidden'),
        keys: ['h'],
        kind: 'undoable',
        run: hidden,
      },
      {
        id: 'remark-undo',
        label: remarkingWords('backOnePoint'),
        keys: ['$mod+z'],
        kind: 'never',
        run: undo,
      },
      {
        id: 'remark-enter',
        label: remarkingWords('placeAtCrosshair'),
        keys: ['Enter'],
        kind: 'view',
        run: enter,
      },
    ];
    return { keep: done, back: undo, commands: [...nudges, ...others] };
  }, [session, item, onAnswer]);
  useCommandKeys(remarkingWords('markAgain'), commands);

  // the picture comes after the step: only then can the next point be asked for
  const shown = useView((state) => state.shownFrame === state.frame);
  const there = useView((state) => state.frame === item.frame);
  useEffect(() => {
    if (shown && there) guideOn(session);
  }, [session, shown, there]);

  return (
    <>
      <output className="stage-prompt">
        <strong>
          {next
            ? remarkingWords('layAgain', { landmark: landmarkWords[next].toLowerCase() })
            : laid > 0
              ? remarkingWords('allPointsLaid')
              : remarkingWords('noPointCanSeen')}
        </strong>
        <span>
          {next
            ? remarkingWords('pointPressHold', { laid: laid + 1, points: item.points.length })
            : remarkingWords('dragPointMend')}
        </span>
      </output>
      <Stage wholePicture />
      <section className="remark-controls" aria-label={remarkingWords('layPoints')}>
        <button
          type="button"
          className="remark-play"
          aria-pressed={playing}
          onClick={() => play(!playing)}
          title={tip('remark-play', remarkingWords('playWhatHappens'))}
        >
          {playing ? '❙❙ Stop' : remarkingWords('around')}
        </button>
        <button
          type="button"
          onClick={back}
          disabled={!touched}
          title={tip('remark-undo', remarkingWords('takeBackLast'))}
        >
          {remarkingWords('backOnePoint')}
        </button>
        <button
          type="button"
          onClick={() => leaveOutNext(session)}
          disabled={next === null}
          title={tip('remark-hidden', remarkingWords('cantSeenPicture'))}
        >
          {rich(remarkingWords.parts('hiddenH', { key: keyOf('remark-hidden'), kbd: keyCap }))}
        </button>
        <span className="remark-space" />
        <button
          type="button"
          className="remark-mark"
          onClick={keep}
          disabled={next !== null || playing}
          title={tip('remark-enter', remarkingWords('keepPointsGo'))}
        >
          {rich(remarkingWords.parts('keepPoints', { key: keyOf('remark-enter'), kbd: keyCap }))}
        </button>
      </section>
    </>
  );
}
