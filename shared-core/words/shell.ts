import { words } from './words';

/** The desktop program: its dialogs, menu and messages. */
export const shellWords = words({
  saveCopy: 'Save a copy',
  save: 'Save',
  copyCouldNot: 'The copy could not be saved',
  couldNotWritten:
    '{name} could not be written there. Check that the disk is connected and has room, then save it again. The file in your library is untouched.',
  picture: 'Picture',
  video: 'Video',
  table: 'Table',
  data: 'Data',
  captions: 'Captions',
  archive: 'Archive',
  allFiles: 'All files',
  submarkIsntAnswering: 'Submark isn’t answering',
  mayBusyAnswer:
    'It may be busy and answer again soon. If not, load its window again. Your marks are saved, but one you made in the last second may be missing.',
  wait: 'Wait',
  loadAgain: 'Load it again',
  submarkCantOpen: 'Submark can’t open the library',
  checkDiskStart: 'Check that its disk is connected and that you may write there, then start Submark again.',
  freeSpaceStart: 'Free some space, then start Submark again.',
  mitLicence: 'MIT licence',
  key: 'Key: {accelerator}',
  yourLibraryCant: 'Your library can’t be found',
  lastConnectIts:
    'It was last in {path}. Connect its disk and look again, or work in the usual library meanwhile; the other one stays chosen.',
  lookAgain: 'Look again',
  openUsualLibrary: 'Open the usual library',
  quit: 'Quit',
  zipArchives: 'Zip archives',
  backUpLibrary: 'Back up the library',
  backUpHere: 'Back up here',
  submarkLibraryZip: 'Submark library.zip',
  chooseClip: 'Choose a clip',
  film: 'Film',
  chooseBackUp: 'Choose a back-up',
  chooseFolder: 'Choose a folder',
  windowCantShown: 'The window can’t be shown',
  stoppedSeveralTimes:
    'It stopped several times in a minute. Your marks are safe. Close Submark and start it again.',
  somethingSubmarkBroke: 'Something in Submark broke',
  yourMarksSaved:
    'Your marks are saved: every change is kept as you make it. Work that was still running was stopped.',
  openSubmarkAgain: 'Open Submark again',
  submarkCantStart: 'Submark can’t start',
  yourLibraryNot:
    'Your library was not changed. Start Submark again. If this comes back, send these lines to whoever looks after Submark:',
});
