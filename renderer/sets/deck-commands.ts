import type { Practice } from '#core/practice/practice-schema';
import { efforts } from '#core/swim-file/swim-schema';
import type { Command } from '../ui/command';
import { undoCommands } from '../ui/undo-buttons';
import type { KeptDocument } from '../documents/kept-document';
import type { DeckLog } from './log-on-deck';
import { setsWords } from '#core/words/sets';

/** Everything on deck that has a key. `log` is of the row the keys speak to; null: no row is there. */
export function deckCommands(deck: {
  readonly step: (by: -1 | 1) => void;
  readonly toRow: (by: -1 | 1) => void;
  readonly toPlan: () => void;
  readonly log: DeckLog | null;
  readonly document: KeptDocument<Practice>;
}): readonly Command[] {
  const { step, toRow, toPlan, log, document } = deck;
  const look = (id: string, label: string, key: string, run: () => void): Command => ({
    id,
    label,
    keys: [key],
    kind: 'view',
    run,
  });
  const keep = (id: string, label: string, keys: readonly string[], run: () => void): Command => ({
    id,
    label,
    keys,
    kind: 'undoable',
    run,
  });
  return [
    look('next', setsWords('nextRepeat'), 'ArrowRight', () => step(1)),
    look('before', setsWords('repeatBefore'), 'ArrowLeft', () => step(-1)),
    look('row-down', setsWords('nextSwimmer'), 'ArrowDown', () => toRow(1)),
    look('row-up', setsWords('swimmerBefore'), 'ArrowUp', () => toRow(-1)),
    keep('more', setsWords('oneStrokeMore'), ['+', 'Shift++', '='], () => log?.more()),
    keep('less', setsWords('oneStrokeFewer'), ['-'], () => log?.fewer()),
    keep('watch', setsWords('startOrStopWatch'), [' '], () => log?.watch()),
    ...efforts.map((effort, i) =>
      keep(`effort-${effort}`, setsWords('effort', { effort }), [String(i + 1)], () => log?.effort(effort)),
    ),
    look('plan', setsWords('backPlan'), 'Escape', toPlan),
    ...undoCommands(document),
  ];
}
