import { timingReadingsWords } from '../../words/timing-readings';

/** Phases of the arm stroke between its marked instants (Chollet, Seifert, Boulesteix, Carter 2006). */
export interface PhaseKind {
  readonly id: string;
  readonly label: string;
  readonly from: 'entry' | 'catch' | 'shoulder' | 'exit';
  readonly to: 'catch' | 'shoulder' | 'exit' | 'next';
}

export const phaseKinds: readonly PhaseKind[] = [
  { id: 'phase-entry-catch', label: timingReadingsWords('entryCatch'), from: 'entry', to: 'catch' },
  { id: 'phase-pull', label: timingReadingsWords('pull'), from: 'catch', to: 'shoulder' },
  { id: 'phase-push', label: timingReadingsWords('push'), from: 'shoulder', to: 'exit' },
  { id: 'phase-recovery', label: timingReadingsWords('recovery'), from: 'exit', to: 'next' },
];
