import type { Trial } from '#core/practice/trial-schema';
import { CommandButton } from '../ui/command-button';
import { KeptText } from '../ui/kept-field';
import { KeySheetButton } from '../ui/key-sheet-button';
import { SaveState } from '../documents/save-state';
import { UndoButtons } from '../ui/undo-buttons';
import type { OpenKept } from '../documents/open-kept';
import { trialTitle } from './trial-words';
import { trialsWords } from '#core/words/trials';

interface Props {
  readonly kept: OpenKept<Trial>;
  readonly trial: Trial;
  readonly onTitle: (title: string) => void;
}

/** The bar over one trial. */
export function TrialBar({ kept, trial, onTitle }: Props) {
  return (
    <header className="sets-bar">
      <CommandButton command="list">{trialsWords('trials')}</CommandButton>
      <h1 className="unseen">{trialTitle(trial.title)}</h1>
      <KeptText
        className="plan-title"
        aria-label={trialsWords('titleTrial')}
        placeholder={trialsWords('whatAskedOne')}
        maxLength={200}
        value={trial.title}
        onKeep={onTitle}
      />
      {trial.invented && <em className="invented-tag">{trialsWords('invented')}</em>}
      <SaveState autosave={kept.autosave} what={trialsWords('trial2')} />
      <UndoButtons document={kept.document} />
      <CommandButton command="csv" tip={trialsWords('spreadsheet')}>
        {trialsWords('csv')}
      </CommandButton>
      <CommandButton command="page" tip={trialsWords('pagePrint')}>
        {trialsWords('pagePdf')}
      </CommandButton>
      <CommandButton command="add" className="primary">
        {trialsWords('chooseSwimsMore')}
      </CommandButton>
      <KeySheetButton />
    </header>
  );
}
