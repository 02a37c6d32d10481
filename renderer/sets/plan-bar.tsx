import type { Practice } from '#core/practice/practice-schema';
import { CommandButton } from '../ui/command-button';
import { KeptText } from '../ui/kept-field';
import { KeySheetButton } from '../ui/key-sheet-button';
import { SaveState } from '../documents/save-state';
import { UndoButtons } from '../ui/undo-buttons';
import type { OpenPractice } from './practice-page';
import { setFacts } from './practice-steps';
import { titleOf } from './sets-words';
import { setsWords } from '#core/words/sets';

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
      <CommandButton command="list">{setsWords('sets')}</CommandButton>
      <h1 className="unseen">{titleOf(practice)}</h1>
      <KeptText
        className="plan-title"
        aria-label={setsWords('titlePractice')}
        placeholder={setsWords('titlePractice')}
        maxLength={200}
        value={practice.title}
        onKeep={(title) => document.run(setFacts(setsWords('namePractice'), { title }))}
      />
      {practice.invented && <em className="invented-tag">{setsWords('invented')}</em>}
      <SaveState autosave={kept.autosave} what={setsWords('practice')} />
      <UndoButtons document={document} />
      <CommandButton command="print" tip={setsWords('pagePrint')} disabled={printing}>
        {printing ? setsWords('making') : setsWords('cardPdf')}
      </CommandButton>
      <CommandButton command="deck" tip={setsWords('log')} className="primary">
        {setsWords('deck')}
      </CommandButton>
      <KeySheetButton />
    </header>
  );
}
