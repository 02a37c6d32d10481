import { codecWords } from '../timeline/codec-words';
import type { HostError } from './host-error';
import { errorsWords } from '../words/errors';

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
    what: errorsWords('submarkAskedIts'),
    todo: errorsWords('closeOpenSubmark'),
  }),
  'not-allowed': ({ name, detail }) => {
    if (detail['window'])
      return {
        what: errorsWords('windowHasNoKey'),
        todo: errorsWords('closeStartSubmark'),
      };
    return {
      what: errorsWords('outsideWhatSubmark', { name }),
      todo: errorsWords('chooseFileYourself'),
    };
  },
  'not-found': ({ name }) => ({
    what: errorsWords('notThereAnyMore', { name }),
    todo: errorsWords('mayHaveBeenMoved'),
  }),
  'cannot-read': ({ name }) => ({
    what: errorsWords('cantRead', { name }),
    todo: errorsWords('checkDiskConnected'),
  }),
  'cannot-write': ({ name }) => ({
    what: errorsWords('cantWritten', { name }),
    todo: errorsWords('checkLibrarysDisk'),
  }),
  'disk-full': () => ({
    what: errorsWords('diskFull'),
    todo: errorsWords('freeSomeSpace'),
  }),
  'read-only': () => ({
    what: errorsWords('libraryDiskCant'),
    todo: errorsWords('moveLibraryWritable'),
  }),
  'library-gone': () => ({
    what: errorsWords('librarysFolderCant'),
    todo: errorsWords('connectItsDisk'),
  }),
  'not-a-library': ({ name }) => ({
    what: errorsWords('noLibrarySubmark', { name }),
    todo: errorsWords('chooseLibrarysOwn'),
  }),
  'swim-damaged': ({ detail }) => ({
    what: detail['where']
      ? errorsWords('swimsFileDamaged', { detail: String(detail['where']) })
      : errorsWords('swimsFileDamagedFull'),
    todo: errorsWords('earlierGoodCopies'),
  }),
  'swim-newer-version': ({ detail }) => ({
    what: errorsWords('swimSavedNewer', { detail: String(detail['needs'] ?? '?') }),
    todo: errorsWords('updateSubmarkOpen'),
  }),
  'squad-damaged': () => ({
    what: errorsWords('squadFileDamaged'),
    todo: errorsWords('earlierGoodCopiesLibrarys'),
  }),
  'squad-newer-version': ({ detail }) => ({
    what: errorsWords('squadSavedNewer', { detail: String(detail['needs'] ?? '?') }),
    todo: errorsWords('updateSubmarkChange'),
  }),
  'file-damaged': ({ name, detail }) => ({
    what: detail['where']
      ? errorsWords('damagedAt', { name, detail: String(detail['where']) })
      : errorsWords('damaged', { name }),
    todo: errorsWords('earlierGoodCopiesGenerations'),
  }),
  'file-newer-version': ({ name, detail }) => ({
    what: errorsWords('savedNewerSubmark', { name, detail: String(detail['needs'] ?? '?') }),
    todo: errorsWords('updateSubmarkChange'),
  }),
  'bundle-damaged': ({ detail }) => ({
    what: errorsWords('noBundleSwim', { detail: detail['what'] ? `: ${String(detail['what'])}` : '' }),
    todo: errorsWords('nothingPutShelf'),
  }),
  conflict: ({ detail }) => ({
    what: errorsWords('changedSomewhereElse'),
    todo: detail['kept']
      ? errorsWords('bothVersionsKept', { detail: String(detail['kept']) })
      : errorsWords('bothVersionsKeptOpen'),
  }),
  'already-there': ({ name }) => ({
    what: errorsWords('alreadyThere', { name }),
    todo: errorsWords('nothingOverwrittenChoose'),
  }),
  'clip-missing': () => ({
    what: errorsWords('clipNotWhere'),
    todo: errorsWords('yourMarksSafe'),
  }),
  'clip-changed': () => ({
    what: errorsWords('clipAnotherFile'),
    todo: errorsWords('yourMarksSafeThey'),
  }),
  'not-a-video': ({ name, detail }) =>
    detail['kind'] === 'photo'
      ? { what: errorsWords('photoNotFilm', { name }), todo: errorsWords('chooseFilmYour') }
      : {
          what: errorsWords('notVideoSubmark', { name }),
          todo: errorsWords('chooseFileYour'),
        },
  'empty-file': ({ name }) => ({ what: errorsWords('empty', { name }), todo: errorsWords('copyFromCamera') }),
  'no-video-track': ({ name }) => ({
    what: errorsWords('hasNoPicture', { name }),
    todo: errorsWords('chooseFileFilm'),
  }),
  'unsupported-codec': ({ name, detail }) => ({
    what: errorsWords('codedWayWindow', {
      name,
      detail: detail['codec'] ? ` (${String(detail['codec'])})` : '',
    }),
    todo: errorsWords('submarkMakesWorking'),
  }),
  'not-decodable': ({ detail }) => ({
    what: errorsWords('computerCantDecode', {
      codec: codecWords(String(detail['codec'] ?? errorsWords('film'))),
    }),
    todo: errorsWords('nothingAddedSave'),
  }),
  encrypted: ({ name }) => ({
    what: errorsWords('encryptedItsPictures', { name }),
    todo: errorsWords('nothingAddedSaveWithout'),
  }),
  truncated: ({ name }) => ({
    what: errorsWords('breaksOffIts', { name }),
    todo: errorsWords('copyFromCameraAgain'),
  }),
  'unreadable-index': ({ name, detail }) => ({
    what: errorsWords('indexCantRead', { name: detail['name'] ? name : errorsWords('file') }),
    todo: errorsWords('fileProbablyDamaged'),
  }),
  'too-large': ({ name }) => ({
    what: errorsWords('tooLarge', { name }),
    todo: errorsWords('cutClipPartYou'),
  }),
  'archive-damaged': ({ name, detail }) => ({
    what: detail['what']
      ? errorsWords('noWholeBackUp', { name, detail: String(detail['what']) })
      : errorsWords('noWholeBackUpName', { name }),
    todo: errorsWords('nothingMadeUse'),
  }),
  'no-media-tool': ({ detail }) => {
    const tool = detail['name'] === 'ffprobe' ? 'ffprobe' : 'ffmpeg';
    return {
      what: errorsWords('noFoundCanStarted', { tool }),
      todo:
        tool === 'ffprobe'
          ? errorsWords('installFfmpegWhich', { tool: tool.toUpperCase(), tool2: tool })
          : errorsWords('installFfmpegOr', { tool: tool.toUpperCase(), tool2: tool }),
    };
  },
  'media-tool-failed': ({ detail }) => ({
    what: errorsWords('mediaToolGave', { detail: String(detail['message'] ?? errorsWords('noReasonGiven')) }),
    todo: errorsWords('clipMayDamaged'),
  }),
  'copy-differs': ({ detail }) => ({
    what: errorsWords('workingCopysFrames'),
    todo: errorsWords('yourMarksSafeClip', {
      detail: String(detail['frames'] ?? '?'),
      detail2: String(detail['copied'] ?? '?'),
    }),
  }),
  'timed-out': () => ({ what: errorsWords('tookTooLongStopped'), todo: errorsWords('tryAgain') }),
  cancelled: () => ({ what: errorsWords('cancelled'), todo: errorsWords('nothingChanged') }),
  'host-failed': () => ({
    what: errorsWords('somethingWentWrong'),
    todo: errorsWords('yourMarksSafeTry'),
  }),
  'host-unreachable': () => ({
    what: errorsWords('submarkHostDoes'),
    todo: errorsWords('yourMarksKept'),
  }),
};

/** What happened and what to do about it, in two short sentences for the coach. */
export function errorWords({ code, detail }: HostError): ErrorWords {
  return wordsOf[code]({ name: String(detail['name'] ?? errorsWords('file2')), detail });
}
