import type { Practice } from '#core/practice/practice-schema';
import { efforts } from '#core/swim-file/swim-schema';
import type { Command } from '../ui/command';
import { undoCommands } from '../ui/undo-buttons';
import type { KeptDocument } from '../documents/kept-document';
import type { DeckLog } from './log-on-deck';

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
    look('next', 'Next repeat', 'ArrowRight', () => step(1)),
    look('before', 'Repeat before', 'ArrowLeft', () => step(-1)),
    look('row-down', 'Next swimmer', 'ArrowDown', () => toRow(1)),
    look('row-up', 'Swimmer before', 'ArrowUp', () => toRow(-1)),
    keep('more', 'One stroke more', ['+', 'Shift++', '='], () => log?.more()),
    keep('less', 'One stroke fewer', ['-'], () => log?.fewer()),
    keep('watch', 'Start or stop the watch', [' '], () => log?.watch()),
    ...efforts.map((effort, i) =>
      keep(`effort-${effort}`, `Effort ${effort}`, [String(i + 1)], () => log?.effort(effort)),
    ),
    look('plan', 'Back to the plan', 'Escape', toPlan),
    ...undoCommands(document),
  ];
}
