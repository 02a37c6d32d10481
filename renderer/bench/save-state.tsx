import { SaveState as DocumentSaveState } from '../documents/save-state';
import { useOpenSwim } from '../open-swim/open-swim';
import { benchWords } from '#core/words/bench';

/** Whether the marks are safe. */
export function SaveState() {
  return <DocumentSaveState autosave={useOpenSwim().autosave} what={benchWords('swim')} />;
}
