import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';
import { nudgePoint, pointIsHeld } from '../open-swim/selection-actions';
import { goToEnd, goToMark, stepBy } from '../open-swim/stepping';

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
      run: () => view.setState({ playing: !view.getState().playing }),
    },
  ];
}
