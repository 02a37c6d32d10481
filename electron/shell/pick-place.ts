import { dialog } from 'electron';
import type { WantedPlace } from '#core/host-contract/operations/place-operations';

/** The system's own dialog for a file, a folder or a new file's name; null when the coach chose nothing. */
export async function pickPlace(wanted: WantedPlace): Promise<string | null> {
  if (wanted === 'new-file') {
    const chosen = await dialog.showSaveDialog({ properties: ['showOverwriteConfirmation'] });
    return chosen.canceled || chosen.filePath === '' ? null : chosen.filePath;
  }
  const chosen = await dialog.showOpenDialog({
    properties: wanted === 'folder' ? ['openDirectory', 'createDirectory'] : ['openFile'],
  });
  return chosen.canceled ? null : (chosen.filePaths[0] ?? null);
}
