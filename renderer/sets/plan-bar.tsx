import type { Practice } from '#core/practice/practice-schema';
import { CommandButton } from '../ui/command-button';
import { KeptText } from '../ui/kept-field';
import { KeySheetButton } from '../ui/key-sheet-button';
import { SaveState } from '../documents/save-state';
import { UndoButtons } from '../ui/undo-buttons';
import type { OpenPractice } from './practice-page';
import { setFacts } from './practice-steps';
import { titleOf } from './sets-words';

interface Props {
  readonly kept: OpenPractice['kept'];
  readonly practice: Practice;
  readonly printing: boolean;
}

/** The bar over a practice's plan. */
export function PlanBar({ kept, practice, printing }: Props) {
  const { document } = kept;
  return (
    <header className="bench-bar sets-bar">
      <CommandButton command="list">‹ Sets</CommandButton>
      <h1 className="unseen">{titleOf(practice)}</h1>
      <KeptText
        className="plan-title"
        aria-label="Title of the practice"
        placeholder="Title of the practice"
        maxLength={200}
        value={practice.title}
        onKeep={(title) => document.run(setFacts('name the practice', { title }))}
      />
      {practice.invented && <em className="invented-tag">invented</em>}
      <SaveState autosave={kept.autosave} what="practice" />
      <UndoButtons document={document} />
      <CommandButton command="print" tip="A page to print" disabled={printing}>
        {printing ? 'Making…' : 'Card as PDF'}
      </CommandButton>
      <CommandButton command="deck" tip="Log it" className="primary">
        On deck
      </CommandButton>
      <KeySheetButton />
    </header>
  );
}
