import type { Trial } from '#core/practice/trial-schema';
import { CommandButton } from '../ui/command-button';
import { KeptText } from '../ui/kept-field';
import { KeySheetButton } from '../ui/key-sheet-button';
import { SaveState } from '../documents/save-state';
import { UndoButtons } from '../ui/undo-buttons';
import type { OpenKept } from '../documents/open-kept';
import { trialTitle } from './trial-words';

interface Props {
  readonly kept: OpenKept<Trial>;
  readonly trial: Trial;
  readonly onTitle: (title: string) => void;
}

/** The bar over one trial. */
export function TrialBar({ kept, trial, onTitle }: Props) {
  return (
    <header className="sets-bar">
      <CommandButton command="list">‹ Trials</CommandButton>
      <h1 className="unseen">{trialTitle(trial.title)}</h1>
      <KeptText
        className="plan-title"
        aria-label="Title of the trial"
        placeholder="What is asked, in one line"
        maxLength={200}
        value={trial.title}
        onKeep={onTitle}
      />
      {trial.invented && <em className="invented-tag">invented</em>}
      <SaveState autosave={kept.autosave} what="trial" />
      <UndoButtons document={kept.document} />
      <CommandButton command="csv" tip="For a spreadsheet">
        CSV
      </CommandButton>
      <CommandButton command="page" tip="A page to print">
        Page as PDF
      </CommandButton>
      <CommandButton command="add" className="primary">
        Choose swims…
      </CommandButton>
      <KeySheetButton />
    </header>
  );
}
