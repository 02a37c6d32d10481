import type { HostError } from './host-error';

/** What happened and what to do about it, in two short sentences for the coach. */
export function errorWords(error: HostError): { readonly what: string; readonly todo: string } {
  const name = String(error.detail['name'] ?? 'The file');
  switch (error.code) {
    case 'bad-request':
      return {
        what: 'Submark asked its own host something it does not understand.',
        todo: 'Close and open Submark; if it comes back, please report it.',
      };
    case 'not-allowed':
      if (error.detail['window'])
        return {
          what: 'This window has no key to Submark.',
          todo: 'Close it, start Submark again, and use the window or address that it opens.',
        };
      return {
        what: `${name} is outside what Submark may touch.`,
        todo: 'Choose a file yourself, in the dialog or by its path.',
      };
    case 'not-found':
      return {
        what: `${name} is not there any more.`,
        todo: 'It may have been moved or removed; open the shelf again.',
      };
    case 'cannot-read':
      return {
        what: `${name} can’t be read.`,
        todo: 'Check that the disk is connected and that you may open the file, then try again.',
      };
    case 'cannot-write':
      return {
        what: `${name} can’t be written.`,
        todo: 'Check that the library’s disk is connected and writable. Your marks are kept in this window until it works.',
      };
    case 'disk-full':
      return {
        what: 'The disk is full.',
        todo: 'Free some space; Submark keeps your marks in this window and tries again.',
      };
    case 'read-only':
      return {
        what: 'The library is on a disk that can’t be written.',
        todo: 'Move the library to a writable disk or unlock this one.',
      };
    case 'library-gone':
      return {
        what: 'The library’s folder can’t be found.',
        todo: 'Connect its disk again; your marks are kept in this window until it is back.',
      };
    case 'not-a-library':
      return {
        what: `${name} is no library of Submark, and it is not empty.`,
        todo: 'Choose the library’s own folder (the one with library.json in it), or a new or empty one to begin a library there.',
      };
    case 'swim-damaged':
      return {
        what: `The swim’s file is damaged${error.detail['where'] ? ` (at ${String(error.detail['where'])})` : ''}.`,
        todo: 'Earlier good copies are in the swim’s .generations folder.',
      };
    case 'swim-newer-version':
      return {
        what: `This swim was saved by a newer Submark (file version ${String(error.detail['needs'] ?? '?')}).`,
        todo: 'Update Submark to open it; nothing in it was changed.',
      };
    case 'squad-damaged':
      return {
        what: 'The squad file is damaged.',
        todo: 'Earlier good copies are in the library’s .generations folder; swims are not affected.',
      };
    case 'squad-newer-version':
      return {
        what: `The squad was saved by a newer Submark (file version ${String(error.detail['needs'] ?? '?')}).`,
        todo: 'Update Submark to change it; nothing in it was changed.',
      };
    case 'file-damaged':
      return {
        what: `${name} is damaged${error.detail['where'] ? ` (at ${String(error.detail['where'])})` : ''}.`,
        todo: 'Earlier good copies are in the .generations folder beside it; swims are not affected.',
      };
    case 'file-newer-version':
      return {
        what: `${name} was saved by a newer Submark (file version ${String(error.detail['needs'] ?? '?')}).`,
        todo: 'Update Submark to change it; nothing in it was changed.',
      };
    case 'bundle-damaged':
      return {
        what: `This is no bundle of a swim, or it was damaged on its way${error.detail['what'] ? `: ${String(error.detail['what'])}` : ''}.`,
        todo: 'Nothing of it was put on the shelf. Ask for it again.',
      };
    case 'conflict':
      return {
        what: 'This was changed somewhere else meanwhile.',
        todo: `Both versions are kept${error.detail['kept'] ? `; yours is in ${String(error.detail['kept'])}` : ''}. Open it again to see the other one.`,
      };
    case 'already-there':
      return { what: `${name} is already there.`, todo: 'Nothing was overwritten; choose another name.' };
    case 'clip-missing':
      return {
        what: 'The clip is not where it was.',
        todo: 'Your marks are safe. Put the clip back or say where it is now.',
      };
    case 'clip-changed':
      return {
        what: 'The clip is another file than the one these marks were made on.',
        todo: 'Your marks are safe; they are not shown over other pictures. Find the original clip.',
      };
    case 'not-a-video':
      return {
        what: `${name} is not a video that Submark knows.`,
        todo: 'Choose the file that your camera made.',
      };
    case 'empty-file':
      return { what: `${name} is empty.`, todo: 'Copy it from the camera again.' };
    case 'no-video-track':
      return {
        what: `${name} has no picture in it, only sound or data.`,
        todo: 'Choose the file with the film.',
      };
    case 'unsupported-codec':
      return {
        what: `${name} is coded in a way this window can’t decode${error.detail['codec'] ? ` (${String(error.detail['codec'])})` : ''}.`,
        todo: 'Submark makes a working copy of it, for which it needs ffmpeg.',
      };
    case 'truncated':
      return {
        what: `${name} breaks off: its end, or the list of its pictures, is missing.`,
        todo: 'Copy it from the camera again, or repair it; nothing was added.',
      };
    case 'unreadable-index':
      return {
        what: `The index of ${error.detail['name'] ? name : 'this file'} can’t be read: what it says of its pictures makes no sense, or could not be made out in time.`,
        todo: 'The file is probably damaged. Copy it from the camera again; if that does not help, save it anew as MP4 with any film program and add that.',
      };
    case 'too-large':
      return { what: `${name} is too large.`, todo: 'Cut the clip to the part you want to review.' };
    case 'archive-damaged':
      return {
        what: `${name} is no whole back-up${error.detail['what'] ? `: it ${String(error.detail['what'])}` : ''}.`,
        todo: 'Nothing was made of it. Use another back-up, or copy this one again from where it is kept.',
      };
    case 'no-media-tool':
      return { what: 'No ffmpeg was found.', todo: 'Install ffmpeg or set SUBMARK_FFMPEG to its path.' };
    case 'media-tool-failed':
      return {
        what: `The media tool gave up: ${String(error.detail['message'] ?? 'no reason given')}.`,
        todo: 'The clip may be damaged; try another copy.',
      };
    case 'copy-differs':
      return {
        what: 'The working copy’s frames did not come out one for one, so it is not used.',
        todo: `Your marks are safe. The clip may be damaged (it has ${String(error.detail['frames'] ?? '?')} frames, the copy ${String(error.detail['copied'] ?? '?')}); copy it from the camera again.`,
      };
    case 'timed-out':
      return { what: 'This took too long and was stopped.', todo: 'Try again.' };
    case 'cancelled':
      return { what: 'Cancelled.', todo: 'Nothing was changed.' };
    case 'host-failed':
      return {
        what: 'Something went wrong inside Submark.',
        todo: 'Your marks are safe. Try again; if it comes back, please report it.',
      };
    case 'host-unreachable':
      return {
        what: 'The Submark host does not answer.',
        todo: 'Your marks are kept in this window. Start Submark again, then reload.',
      };
  }
}
