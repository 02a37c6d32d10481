import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';
import { nudgePoint, pointIsHeld } from '../open-swim/selection-actions';
import { goToEnd, goToMark, stepBy } from '../open-swim/stepping';
import { benchWords } from '#core/words/bench';

/** From frame to frame and from mark to mark; while a point is held, the same keys move the point. */
export function walkingCommands(session: OpenSwim): readonly Command[] {
  const { view } = session;
  const holding = (): boolean => pointIsHeld(session);
  const stepping = (): boolean => !pointIsHeld(session);

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
        label: benchWords('movePointPx', { pixels }),
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

  return [
    ...nudges,
    step('frame-back', benchWords('oneFrameBack'), ['ArrowLeft'], (held) => stepBy(session, -1, held)),
    step('frame-on', benchWords('oneFrame'), ['ArrowRight'], (held) => stepBy(session, 1, held)),
    step('frames-back', benchWords('tenFramesBack'), ['Shift+ArrowLeft'], (held) =>
      stepBy(session, -10, held),
    ),
    step('frames-on', benchWords('tenFrames'), ['Shift+ArrowRight'], (held) => stepBy(session, 10, held)),
    step('mark-before', benchWords('previousMark'), ['ArrowUp'], () => goToMark(session, -1)),
    step('mark-after', benchWords('nextMark'), ['ArrowDown'], () => goToMark(session, 1)),
    step('first-frame', benchWords('firstFrame'), ['Home'], () => goToEnd(session, 'first')),
    step('last-frame', benchWords('lastFrame'), ['End'], () => goToEnd(session, 'last')),
    {
      id: 'play',
      label: benchWords('playOrStop'),
      // Space is read where it is let go, because held down it moves the picture
      keys: [],
      told: ['Space'],
      kind: 'view',
      enabled: () => session.film.getState().source !== null,
      run: () => view.setState({ playing: !view.getState().playing }),
    },
  ];
}
