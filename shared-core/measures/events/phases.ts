/** Phases of the arm stroke between its marked instants (Chollet, Seifert, Boulesteix, Carter 2006). */
export interface PhaseKind {
  readonly id: string;
  readonly label: string;
  readonly from: 'entry' | 'catch' | 'shoulder' | 'exit';
  readonly to: 'catch' | 'shoulder' | 'exit' | 'next';
}

export const phaseKinds: readonly PhaseKind[] = [
  { id: 'phase-entry-catch', label: 'Entry and catch', from: 'entry', to: 'catch' },
  { id: 'phase-pull', label: 'Pull', from: 'catch', to: 'shoulder' },
  { id: 'phase-push', label: 'Push', from: 'shoulder', to: 'exit' },
  { id: 'phase-recovery', label: 'Recovery', from: 'exit', to: 'next' },
];
