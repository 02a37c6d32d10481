import { codecWords } from '../timeline/codec-words';
import type { HostError } from './host-error';

export interface ErrorWords {
  readonly what: string;
  readonly todo: string;
}

interface About {
  /** The file it is about, as it stands at the beginning of a sentence. */
  readonly name: string;
  readonly detail: HostError['detail'];
}

/** Two short sentences for each way to fail; the compiler finds one that is missing. */
const wordsOf: Readonly<Record<HostError['code'], (about: About) => ErrorWords>> = {
  'bad-request': () => ({
    what: 'Submark asked its own host something it does not understand.',
    todo: 'Close and open Submark; if it comes back, please report it.',
  }),
  'not-allowed': ({ name, detail }) => {
    if (detail['window'])
      return {
        what: 'This window has no key to Submark.',
        todo: 'Close it, start Submark again, and use the window or address that it opens.',
      };
    return {
      what: `${name} is outside what Submark may touch.`,
      todo: 'Choose a file yourself, in the dialog or by its path.',
    };
  },
  'not-found': ({ name }) => ({
    what: `${name} is not there any more.`,
    todo: 'It may have been moved or removed; open the shelf again.',
  }),
  'cannot-read': ({ name }) => ({
    what: `${name} can’t be read.`,
    todo: 'Check that the disk is connected and that you may open the file, then try again.',
  }),
  'cannot-write': ({ name }) => ({
    what: `${name} can’t be written.`,
    todo: 'Check that the library’s disk is connected and writable. Your marks are kept in this window until it works.',
  }),
  'disk-full': () => ({
    what: 'The disk is full.',
    todo: 'Free some space; Submark keeps your marks in this window and tries again.',
  }),
  'read-only': () => ({
    what: 'The library is on a disk that can’t be written.',
    todo: 'Move the library to a writable disk or unlock this one.',
  }),
  'library-gone': () => ({
    what: 'The library’s folder can’t be found.',
    todo: 'Connect its disk again; your marks are kept in this window until it is back.',
  }),
  'not-a-library': ({ name }) => ({
    what: `${name} is no library of Submark, and it is not empty.`,
    todo: 'Choose the library’s own folder (the one with library.json in it), or a new or empty one to begin a library there.',
  }),
  'swim-damaged': ({ detail }) => ({
    what: `The swim’s file is damaged${detail['where'] ? ` (at ${String(detail['where'])})` : ''}.`,
    todo: 'Earlier good copies are in the swim’s .generations folder.',
  }),
  'swim-newer-version': ({ detail }) => ({
    what: `This swim was saved by a newer Submark (file version ${String(detail['needs'] ?? '?')}).`,
    todo: 'Update Submark to open it; nothing in it was changed.',
  }),
  'squad-damaged': () => ({
    what: 'The squad file is damaged.',
    todo: 'Earlier good copies are in the library’s .generations folder; swims are not affected.',
  }),
  'squad-newer-version': ({ detail }) => ({
    what: `The squad was saved by a newer Submark (file version ${String(detail['needs'] ?? '?')}).`,
    todo: 'Update Submark to change it; nothing in it was changed.',
  }),
  'file-damaged': ({ name, detail }) => ({
    what: `${name} is damaged${detail['where'] ? ` (at ${String(detail['where'])})` : ''}.`,
    todo: 'Earlier good copies are in the .generations folder beside it; swims are not affected.',
  }),
  'file-newer-version': ({ name, detail }) => ({
    what: `${name} was saved by a newer Submark (file version ${String(detail['needs'] ?? '?')}).`,
    todo: 'Update Submark to change it; nothing in it was changed.',
  }),
  'bundle-damaged': ({ detail }) => ({
    what: `This is no bundle of a swim, or it was damaged on its way${detail['what'] ? `: ${String(detail['what'])}` : ''}.`,
    todo: 'Nothing of it was put on the shelf. Ask for it again.',
  }),
  conflict: ({ detail }) => ({
    what: 'This was changed somewhere else meanwhile.',
    todo: `Both versions are kept${detail['kept'] ? `; yours is in ${String(detail['kept'])}` : ''}. Open it again to see the other one.`,
  }),
  'already-there': ({ name }) => ({
    what: `${name} is already there.`,
    todo: 'Nothing was overwritten; choose another name.',
  }),
  'clip-missing': () => ({
    what: 'The clip is not where it was.',
    todo: 'Your marks are safe. Put the clip back or say where it is now.',
  }),
  'clip-changed': () => ({
    what: 'The clip is another file than the one these marks were made on.',
    todo: 'Your marks are safe; they are not shown over other pictures. Find the original clip.',
  }),
  'not-a-video': ({ name, detail }) =>
    detail['kind'] === 'photo'
      ? { what: `${name} is a photo, not a film.`, todo: 'Choose the film that your camera made.' }
      : {
          what: `${name} is not a video that Submark knows.`,
          todo: 'Choose the file that your camera made.',
        },
  'empty-file': ({ name }) => ({ what: `${name} is empty.`, todo: 'Copy it from the camera again.' }),
  'no-video-track': ({ name }) => ({
    what: `${name} has no picture in it, only sound or data.`,
    todo: 'Choose the file with the film.',
  }),
  'unsupported-codec': ({ name, detail }) => ({
    what: `${name} is coded in a way this window can’t decode${detail['codec'] ? ` (${String(detail['codec'])})` : ''}.`,
    todo: 'Submark makes a working copy of it, for which it needs ffmpeg.',
  }),
  'not-decodable': ({ detail }) => ({
    what: `This computer can’t decode ${codecWords(String(detail['codec'] ?? 'the film'))}: neither this window nor its ffmpeg knows how.`,
    todo: 'Nothing was added. Save the film as H.264 (MP4) in your camera’s or phone’s own app and add that, or install a newer ffmpeg.',
  }),
  encrypted: ({ name }) => ({
    what: `${name} is encrypted: its pictures can’t be seen without a key.`,
    todo: 'Nothing was added. Save it without copy protection in the app it comes from, and add that.',
  }),
  truncated: ({ name }) => ({
    what: `${name} breaks off: its end, or the list of its pictures, is missing.`,
    todo: 'Copy it from the camera again, or repair it; nothing was added.',
  }),
  'unreadable-index': ({ name, detail }) => ({
    what: `The index of ${detail['name'] ? name : 'this file'} can’t be read: what it says of its pictures makes no sense, or could not be made out in time.`,
    todo: 'The file is probably damaged. Copy it from the camera again; if that does not help, save it anew as MP4 with any film program and add that.',
  }),
  'too-large': ({ name }) => ({
    what: `${name} is too large.`,
    todo: 'Cut the clip to the part you want to review.',
  }),
  'archive-damaged': ({ name, detail }) => ({
    what: `${name} is no whole back-up${detail['what'] ? `: it ${String(detail['what'])}` : ''}.`,
    todo: 'Nothing was made of it. Use another back-up, or copy this one again from where it is kept.',
  }),
  'no-media-tool': ({ detail }) => {
    const tool = detail['name'] === 'ffprobe' ? 'ffprobe' : 'ffmpeg';
    return {
      what: `No ${tool} was found that can be started here.`,
      todo: `Install ffmpeg${tool === 'ffprobe' ? ', which brings ffprobe,' : ''} or set SUBMARK_${tool.toUpperCase()} to the path of ${tool}.`,
    };
  },
  'media-tool-failed': ({ detail }) => ({
    what: `The media tool gave up: ${String(detail['message'] ?? 'no reason given')}.`,
    todo: 'The clip may be damaged; try another copy.',
  }),
  'copy-differs': ({ detail }) => ({
    what: 'The working copy’s frames did not come out one for one, so it is not used.',
    todo: `Your marks are safe. The clip may be damaged (it has ${String(detail['frames'] ?? '?')} frames, the copy ${String(detail['copied'] ?? '?')}); copy it from the camera again.`,
  }),
  'timed-out': () => ({ what: 'This took too long and was stopped.', todo: 'Try again.' }),
  cancelled: () => ({ what: 'Cancelled.', todo: 'Nothing was changed.' }),
  'host-failed': () => ({
    what: 'Something went wrong inside Submark.',
    todo: 'Your marks are safe. Try again; if it comes back, please report it.',
  }),
  'host-unreachable': () => ({
    what: 'The Submark host does not answer.',
    todo: 'Your marks are kept in this window. Start Submark again, then reload.',
  }),
};

/** What happened and what to do about it, in two short sentences for the coach. */
export function errorWords({ code, detail }: HostError): ErrorWords {
  return wordsOf[code]({ name: String(detail['name'] ?? 'The file'), detail });
}
