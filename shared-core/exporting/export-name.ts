import type { SwimCard } from '../swim-file/swim-schema';
import { safeFileName } from './safe-file-name';

/** "Pip - 2026-05-14 - kick top - frame 12.png": the file name of something exported from a swim. */
export function exportName(
  card: Pick<SwimCard, 'swimmerName' | 'date'>,
  what: readonly string[],
  ending: string,
): string {
  return safeFileName([card.swimmerName || 'swimmer', card.date, ...what], ending);
}

/** "Pip - 2026-05-14 - beside - Bo - 2026-05-21 - frames 12 and 40.png": the same of two swims. */
export function pairExportName(
  first: Pick<SwimCard, 'swimmerName' | 'date'>,
  second: Pick<SwimCard, 'swimmerName' | 'date'>,
  what: readonly string[],
  ending: string,
): string {
  return exportName(first, ['beside', second.swimmerName || 'swimmer', second.date, ...what], ending);
}
