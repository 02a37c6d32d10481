import type { EventMark } from '#core/swim-file/swim-schema';
import { markPhrase } from '#core/marks/mark-words';
import type { SwimChange, SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

export function addEvent(mark: EventMark): SwimCommand {
  return {
    name: openSwimWords('mark', { markPhrase: markPhrase(mark) }),
    frame: mark.frame,
    change: (draft) => {
      draft.events.push({ ...mark });
    },
  };
}

/** The bare change of a move, for drags that run it many times and keep the last. */
export function placeEventAt(id: string, frame: number): SwimChange {
  return (draft) => {
    const mark = draft.events.find((each) => each.id === id);
    if (!mark || mark.frame === frame) return;
    mark.frame = frame;
    // put there by hand: the instant the points spoke for is no longer meant
    mark.refined = null;
  };
}

export function moveEvent(mark: EventMark, frame: number): SwimCommand {
  return {
    name: openSwimWords('move', { markPhrase: markPhrase(mark) }),
    frame,
    frameBefore: mark.frame,
    change: placeEventAt(mark.id, frame),
  };
}

/** Says which hand, which way the mouth turned or how many metres, of a mark that is there. */
export function sayOfEvent(
  mark: EventMark,
  said: Pick<EventMark, 'hand' | 'breathTo' | 'metres'>,
): SwimCommand {
  return {
    name: openSwimWords('change', {
      markPhrase: markPhrase(mark),
      markPhrase2: markPhrase({ ...mark, ...said }),
    }),
    frame: mark.frame,
    change: (draft) => {
      const found = draft.events.find((each) => each.id === mark.id);
      if (found) Object.assign(found, said);
    },
  };
}

export function removeEvent(mark: EventMark): SwimCommand {
  return {
    name: openSwimWords('remove', { markPhrase: markPhrase(mark) }),
    frame: mark.frame,
    change: (draft) => {
      draft.events = draft.events.filter((each) => each.id !== mark.id);
    },
  };
}
