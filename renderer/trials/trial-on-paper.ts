import type { Drill } from '#core/practice/drill-schema';
import type { TrialContrast } from '#core/practice/trial-contrast';
import type { TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import type { Squad } from '#core/swim-file/squad-schema';

/** A trial with all that its printed page shows. */
export interface TrialOnPaper {
  readonly trial: Trial;
  readonly rows: readonly TrialRow[];
  readonly contrasts: readonly TrialContrast[];
  readonly squad: Squad;
  readonly own: readonly Drill[];
}
