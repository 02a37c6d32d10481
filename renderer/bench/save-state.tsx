import { SaveState as DocumentSaveState } from '../app/save-state';
import { useBench } from './bench-session';

/** Whether the marks are safe. */
export function SaveState() {
  return <DocumentSaveState autosave={useBench().autosave} what="swim" />;
}
