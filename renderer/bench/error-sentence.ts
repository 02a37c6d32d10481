import type { HostError, HostErrorCode } from '#core/host-contract/host-error';

const sentences: Readonly<Record<HostErrorCode, string>> = {
  'bad-request': 'the library did not accept it.',
  'not-allowed': 'the library is not allowed to do that.',
  'not-found': 'it is not in the library any more.',
  'cannot-read': 'the file can’t be read. Check that the disk is there and may be read.',
  'cannot-write': 'the file can’t be written. Check that the disk is there and may be written.',
  'disk-full': 'the disk is full. Free some space.',
  'read-only': 'the library’s folder is read-only.',
  'library-gone': 'the library’s folder is gone. Put its disk back.',
  'swim-damaged': 'the swim’s file is damaged; it was left as it is.',
  'swim-newer-version': 'the swim was saved by a newer Submark; update this one to open it.',
  'squad-damaged': 'the squad’s file is damaged; it was left as it is.',
  'squad-newer-version': 'the squad was saved by a newer Submark.',
  conflict: 'it was changed elsewhere meanwhile.',
  'already-there': 'something of that name is there already.',
  'clip-missing': 'the clip is not where it was.',
  'clip-changed': 'that is another clip, or this one was changed.',
  'not-a-video': 'that is not a video.',
  'empty-file': 'the file is empty.',
  'no-video-track': 'the file holds no pictures.',
  'unsupported-codec': 'this window can’t decode its kind of video. Convert it to H.264.',
  truncated: 'the file is cut short. Copy it from the camera again.',
  'too-large': 'it is too large.',
  'no-media-tool': 'the media tool for that is not installed.',
  'media-tool-failed': 'the media tool failed.',
  'timed-out': 'it took too long.',
  cancelled: 'it was stopped.',
  'host-unreachable': 'the library does not answer. Check that Submark is still running.',
};

/** The end of a sentence that says what went wrong and what to do. */
export const errorSentence = (error: HostError): string => sentences[error.code];
