import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { cycleFrames } from '#core/exporting/cycle-frames';
import { exportSource, usualReadings } from '#core/exporting/export-source';
import { bundleMadeSchema } from '#core/host-contract/operations/bundle-operations';
import { Dialog } from '../ui/dialog';
import { openRoute } from '../ui/use-route';
import { useTip } from '../ui/use-tip';
import { type OpenSwim, clockOf, useOpenSwim } from '../open-swim/open-swim';
import { followJob } from '../host/follow-job';
import { keepInViewStore } from '../open-swim/keep-in-view';
import { KeepInViewTick } from '../stage/keep-in-view-tick';
import { framesWithMarks } from '../open-swim/selectors';
import { KickDoubtCaution } from './kick-doubt-caution';
import { type ExportPart, exportParts, framesFromWords, framesInWords, showsSwimmer } from './export-choice';
import { canFan, exportJobs } from './make-exports';
import { ReadingTicks } from './reading-ticks';
import { SavedList } from './saved-list';
import { useConsent } from './use-consent';
import { type HostJob, useSaving } from './use-saving';
import './export.css';
import { exportWords } from '#core/words/export';

const partWords: Readonly<Record<ExportPart, { readonly name: string; readonly about: string }>> = {
  stills: { name: exportWords('stills'), about: exportWords('onePngFrameBody') },
  sheet: { name: exportWords('contactSheet'), about: exportWords('oneCycleAtEqual') },
  fan: { name: exportWords('postureFan'), about: exportWords('bodyLinesOne') },
  'readings-csv': { name: exportWords('readings'), about: exportWords('csvRowReading') },
  'events-csv': { name: exportWords('events'), about: exportWords('csvRowEvent') },
  'landmarks-csv': { name: exportWords('landmarks'), about: exportWords('csvRowPointFrame') },
  'readings-json': { name: exportWords('readingsFull'), about: exportWords('jsonCommandLine') },
  'events-vtt': { name: exportWords('eventsCaptions'), about: exportWords('webvttAnyPlayer') },
  bundle: { name: exportWords('swimBundle'), about: exportWords('clipMarksOne') },
};
const pictureParts: readonly ExportPart[] = ['stills', 'sheet', 'fan'];
const dataParts = exportParts.filter((part) => !pictureParts.includes(part) && part !== 'bundle');

interface Props {
  readonly onClose: () => void;
  /** Closes this dialog and opens that of the video. */
  readonly onVideo: () => void;
}

/** Everything that can be saved of a swim, chosen together and saved in one go. */
export function ExportDialog({ onClose, onVideo }: Props) {
  const tip = useTip();
  const session = useOpenSwim();
  const { swimmer, markingError } = useStore(session.known);
  const film = useStore(session.film, (state) => state.source);
  const swim = session.document.swim();
  const source = useMemo(() => exportSource(swim, { swimmer, markingError }), [swim, swimmer, markingError]);
  const count = clockOf(swim).table.starts.length;
  const here = session.view.getState().frame;
  const [parts, setParts] = useState<ReadonlySet<ExportPart>>(new Set(['stills']));
  const [words, setWords] = useState(framesInWords([here]));
  const [sheetPictures, setSheetPictures] = useState<8 | 12>(8);
  const [readings, setReadings] = useState<readonly string[]>(() =>
    usualReadings(source, 4).map(({ definition }) => definition.id),
  );
  const [keepInView, setKeepInView] = useState(() => keepInViewStore.getState().keep);
  const sessions = useMemo(() => [session], [session]);
  const consent = useConsent(sessions);
  const { saving, files, save, cancel, reset } = useSaving(session.host);
  const cycle = useMemo(() => cycleFrames(source.context.events, source.clock, here, 8), [source, here]);
  const fan = useMemo(() => canFan(source, here), [source, here]);
  const frames = framesFromWords(words, count);
  const shows = [...parts].some((part) => showsSwimmer.has(part));
  const asks = shows && !consent.mayShow;
  const cycleWords = cycle
    ? exportWords('of', { of: cycle.of, number: cycle.number, count: cycle.count })
    : null;

  const why = (part: ExportPart): string | null => {
    if (part === 'stills' && !film) return exportWords('clipNotHere');
    if (part === 'sheet' && !film) return exportWords('clipNotHere');
    if ((part === 'sheet' || part === 'fan') && !cycle) return exportWords('markTwoHandEntries');
    if (part === 'fan' && !fan) return exportWords('layTwoBodyLines');
    return null;
  };
  const changing =
    <T,>(set: (next: T) => void) =>
    (next: T): void => {
      set(next);
      reset();
    };
  const toggle = (part: ExportPart): void => {
    reset();
    setParts((before) => {
      const next = new Set(before);
      if (!next.delete(part)) next.add(part);
      return next;
    });
  };
  const chosen = exportParts.filter((part) => parts.has(part) && why(part) === null);
  const stillsWrong = chosen.includes('stills') && (frames === null || frames.length === 0);
  const jobs = exportJobs(
    { parts: new Set(chosen), frames: frames ?? [], keepInView, sheetPictures, readings, cycleAt: here },
    source,
    film,
  );
  const hostJobs = chosen.includes('bundle') ? [bundleJob(session)] : [];
  const total = jobs.length + hostJobs.length;
  const busy = saving.kind === 'saving';

  const row = (part: ExportPart) => (
    <PartRow key={part} part={part} ticked={parts.has(part)} why={why(part)} busy={busy} onToggle={toggle} />
  );

  return (
    <Dialog title={exportWords('export')} wide onCancel={() => (busy ? cancel() : onClose())}>
      <div className="export-groups">
        <fieldset>
          <legend>{exportWords('pictures')}</legend>
          {row('stills')}
          <StillFrames
            words={words}
            marked={framesWithMarks(swim)}
            count={count}
            busy={busy}
            wrong={stillsWrong}
            onWords={changing(setWords)}
          />
          <KeepInViewTick
            className="export-tick"
            keep={keepInView}
            disabled={busy}
            onKeep={changing(setKeepInView)}
          />
          {row('sheet')}
          <SheetPictures pictures={sheetPictures} busy={busy} of={cycleWords} onPictures={setSheetPictures} />
          {row('fan')}
          <ReadingTicks source={source} chosen={readings} disabled={busy} onChoose={changing(setReadings)} />
        </fieldset>
        <div className="export-column">
          <fieldset>
            <legend>{exportWords('data')}</legend>
            {dataParts.map(row)}
          </fieldset>
          <fieldset>
            <legend>{exportWords('wholeSwim')}</legend>
            {row('bundle')}
          </fieldset>
          <button
            type="button"
            disabled={busy}
            onClick={() => {
              onClose();
              openRoute({ screen: 'handout', ids: [swim.id] });
            }}
            title={tip('handout', exportWords('onePageSwimmer'))}
          >
            {exportWords('handoutSwimmer')}
          </button>
          <button
            type="button"
            disabled={busy}
            onClick={onVideo}
            title={tip('video', exportWords('stretchSwimVideo'))}
          >
            {exportWords('videoStretch')}
          </button>
        </div>
      </div>
      <KickDoubtCaution readings={source.readings} slowdown={swim.clip.slowdown.factor} />
      {shows && consent.question}
      <SavedList files={files} host={session.host} />
      {saving.kind === 'ended' && saving.trouble && (
        <p role="alert" className="message message-trouble">
          {saving.trouble}
        </p>
      )}
      <footer className="dialog-foot">
        <button
          type="button"
          className="primary"
          data-first-focus
          disabled={busy || total === 0 || stillsWrong || asks}
          onClick={() => void save(jobs, hostJobs).then(consent.used)}
        >
          {exportWords('saveFiles', { total })}
        </button>
        {busy && (
          <output className="export-progress">
            {exportWords('ofDone', { done: saving.done + 1, count: saving.count, saving: saving.words })}
          </output>
        )}
        <button type="button" onClick={() => (busy ? cancel() : onClose())}>
          {busy ? exportWords('cancel') : exportWords('close')}
        </button>
      </footer>
    </Dialog>
  );
}

/** The swim's bundle, made by the host once all marks are on the disk. */
function bundleJob(session: OpenSwim): HostJob {
  return {
    name: exportWords('bundle'),
    async run(signal, say) {
      await session.autosave.flush();
      const started = await session.host.call('bundle/make', { id: session.document.swim().id });
      if (!started.ok) return started;
      return followJob(session.host, started.value.jobId, {
        result: bundleMadeSchema,
        signal,
        onProgress: (share, doing) =>
          say(`${doing}${share === null ? '' : `, ${Math.round(share * 100)} %`}`),
      });
    },
  };
}

interface PartRowProps {
  readonly part: ExportPart;
  readonly ticked: boolean;
  /** Why it can't be saved yet; null: it can. */
  readonly why: string | null;
  readonly busy: boolean;
  readonly onToggle: (part: ExportPart) => void;
}

function PartRow({ part, ticked, why, busy, onToggle }: PartRowProps) {
  return (
    <label className="export-row">
      <input
        type="checkbox"
        checked={ticked && why === null}
        disabled={why !== null || busy}
        onChange={() => onToggle(part)}
      />
      <span>
        <b>{partWords[part].name}</b>
        <small>{why ? exportWords('notYet', { why }) : partWords[part].about}</small>
      </span>
    </label>
  );
}

interface StillFramesProps {
  readonly words: string;
  readonly marked: readonly number[];
  readonly count: number;
  readonly busy: boolean;
  readonly wrong: boolean;
  readonly onWords: (words: string) => void;
}

/** Which frames are saved as stills. */
function StillFrames({ words, marked, count, busy, wrong, onWords }: StillFramesProps) {
  return (
    <div className="export-more">
      <label>
        <span>{exportWords('frames')}</span>
        <input
          value={words}
          disabled={busy}
          aria-invalid={wrong}
          onChange={(event) => onWords(event.target.value)}
        />
      </label>
      <button
        type="button"
        disabled={busy || marked.length === 0}
        onClick={() => onWords(framesInWords(marked))}
      >
        {exportWords('allMarkedFrames')}
      </button>
      {wrong && <small role="alert">{exportWords('writeFramesFrom', { count })}</small>}
    </div>
  );
}

interface SheetPicturesProps {
  readonly pictures: 8 | 12;
  readonly busy: boolean;
  /** The cycle it shows; null: there is none yet. */
  readonly of: string | null;
  readonly onPictures: (pictures: 8 | 12) => void;
}

function SheetPictures({ pictures, busy, of, onPictures }: SheetPicturesProps) {
  return (
    <div className="export-more">
      <label>
        <span>{exportWords('pictures')}</span>
        <select
          value={pictures}
          disabled={busy}
          onChange={(event) => onPictures(event.target.value === '12' ? 12 : 8)}
        >
          <option value="8">8</option>
          <option value="12">12</option>
        </select>
      </label>
      {of && <small>{exportWords('oneStageStands', { of })}</small>}
    </div>
  );
}
