import { shownLines } from '#core/drawing/shown-line';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { withKey } from '../ui/use-tip';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { ComputedReading, ReadingDefinition } from '#core/measures/reading';
import { clockOf, useOpenSwim } from '../open-swim/open-swim';
import { arrangeReadings } from '../readings/arrange-readings';
import { formatReading } from '#core/measures/format-reading';
import { useConsent } from '../export/use-consent';
import type { FramePicture } from '../video/frame-source';
import { stillMarks, stillView } from '#core/exporting/compose-still';
import { KeepInViewTick } from '../stage/keep-in-view-tick';
import { keepInViewStore } from '../open-swim/keep-in-view';
import { drawStill } from './draw-still';
import { mostStillReadings, stillContent } from '#core/exporting/still-content';
import { safeFileName } from '#core/exporting/safe-file-name';
import './still.css';
import { stillWords } from '#core/words/still';
import { rich } from '../ui/rich';

interface Props {
  readonly catalogue: readonly ReadingDefinition[];
  readonly onClose: () => void;
}

type Saving =
  | { readonly kind: 'ready' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'saved'; readonly path: string; readonly download: string; readonly name: string }
  | { readonly kind: 'failed'; readonly words: string };

/** Readings put on a still to begin with, where they are there; a choice of ours. */
const usualChoice = ['kick1-top-to-entry', 'kick2-bottom-to-exit', 'kick-frequency', 'kick-amplitude-toe'];
const nothing: ReadonlySet<string> = new Set();

const failedWords = (error: HostError): string => {
  const { what, todo } = errorWords(error);
  return stillWords('notSaved', { what, todo });
};

/** Chooses what goes on a still, shows it as it will be, and saves it at the picture's full size. */
export function StillDialog({ catalogue, onClose }: Props) {
  const session = useOpenSwim();
  const dialog = useRef<HTMLDialogElement>(null);
  const preview = useRef<HTMLCanvasElement>(null);
  const readings = useStore(session.readings.store, (state) => state.readings);
  const source = useStore(session.film, (state) => state.source);
  const swim = session.document.swim();
  const { frame } = session.view.getState();
  const sessions = useMemo(() => [session], [session]);
  const consent = useConsent(sessions);
  const [saving, setSaving] = useState<Saving>({ kind: 'ready' });
  const [keep, setKeep] = useState(() => keepInViewStore.getState().keep);
  const [picture, setPicture] = useState<FramePicture | null>(null);

  const rows = useMemo(() => {
    const groups = arrangeReadings(catalogue, readings, nothing);
    const inOrder = [...groups.flatMap((each) => each.first), ...groups.flatMap((each) => each.more)];
    return inOrder.flatMap(({ definition, reading }) =>
      reading.status === 'computed' ? [{ definition, reading }] : [],
    );
  }, [catalogue, readings]);
  const [chosen, setChosen] = useState<readonly string[]>(() => {
    const ids = rows.map((row) => row.definition.id);
    const usual = usualChoice.filter((id) => ids.includes(id));
    return usual.length > 0 ? usual : ids.slice(0, usualChoice.length);
  });
  const content = useMemo(
    () =>
      stillContent(
        swim,
        clockOf(swim),
        frame,
        rows.filter((row) => chosen.includes(row.definition.id)),
      ),
    [swim, frame, rows, chosen],
  );

  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  useEffect(() => {
    let left = false;
    source?.show(frame, 0).then(
      (shown) => {
        if (!left && shown.frame === frame) setPicture(shown);
      },
      (problem: unknown) => {
        if (left || (problem instanceof DOMException && problem.name === 'AbortError')) return;
        setSaving({ kind: 'failed', words: stillWords('frameCantDecoded') });
      },
    );
    return () => {
      left = true;
    };
  }, [source, frame]);
  useEffect(() => {
    const canvas = preview.current;
    const paper = canvas?.getContext('2d', { alpha: false });
    if (!canvas || !paper || !picture) return;
    canvas.width = picture.width;
    canvas.height = picture.height;
    const view = stillView(swim, frame, { x: 0, y: 0, width: picture.width, height: picture.height }, keep);
    const marks = stillMarks(swim, shownLines(swim).get(frame) ?? null, view);
    drawStill(paper, picture, view, marks, content);
  }, [picture, swim, frame, keep, content]);

  const download = saving.kind === 'saved' ? saving.download : null;
  useEffect(() => () => (download ? URL.revokeObjectURL(download) : undefined), [download]);

  const save = async (): Promise<void> => {
    const canvas = preview.current;
    if (!canvas || !picture) return;
    setSaving({ kind: 'saving' });
    const png = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (!png) {
      setSaving({ kind: 'failed', words: stillWords('pictureTooLarge') });
      return;
    }
    const { card } = swim;
    const name = safeFileName(
      [
        card.swimmerName || 'swimmer',
        card.date,
        content.event || 'still',
        stillWords('frame', { frame: frame + 1 }),
      ],
      'png',
    );
    const result = await session.host.sendExport(name, png);
    consent.used();
    setSaving(
      result.ok
        ? {
            kind: 'saved',
            path: result.value.path,
            name: result.value.name,
            download: URL.createObjectURL(png),
          }
        : { kind: 'failed', words: failedWords(result.error) },
    );
  };
  const keepOrNot = (next: boolean): void => {
    setKeep(next);
    setSaving({ kind: 'ready' });
  };
  const toggle = (id: string): void => {
    setChosen((now) => (now.includes(id) ? now.filter((each) => each !== id) : [...now, id]));
    setSaving({ kind: 'ready' });
  };

  return (
    <dialog ref={dialog} className="still-dialog" onClose={onClose} aria-labelledby="still-title">
      <header>
        <h1 id="still-title">{stillWords('stillFrame', { frame: frame + 1 })}</h1>
        <button
          type="button"
          onClick={() => dialog.current?.close()}
          title={withKey(stillWords('close'), { keys: ['Escape'] })}
        >
          {stillWords('close')}
        </button>
      </header>
      <div className="still-body">
        {source ? (
          <canvas ref={preview} className="still-preview" aria-label={stillWords('stillWillSaved')} />
        ) : (
          <p className="still-preview">{stillWords('thereNoPicture')}</p>
        )}
        <div>
          <KeepInViewTick className="keep-in-view-tick" keep={keep} onKeep={keepOrNot} />
          <StillReadings rows={rows} chosen={chosen} onToggle={toggle} />
        </div>
      </div>
      <footer>
        {consent.question}
        {saving.kind === 'saved' && <SavedStill {...saving} />}
        {saving.kind === 'failed' && <p role="alert">{saving.words}</p>}
        <button
          type="button"
          className="main-button"
          disabled={!picture || saving.kind === 'saving' || !consent.mayShow}
          onClick={() => void save()}
        >
          {saving.kind === 'saving' ? stillWords('saving') : stillWords('savePng')}
        </button>
      </footer>
    </dialog>
  );
}

interface ReadingsProps {
  readonly rows: readonly { readonly definition: ReadingDefinition; readonly reading: ComputedReading }[];
  readonly chosen: readonly string[];
  readonly onToggle: (id: string) => void;
}

/** Which readings are written on the still. */
function StillReadings({ rows, chosen, onToggle }: ReadingsProps) {
  return (
    <fieldset>
      <legend>{stillWords('readings', { chosen: chosen.length, mostStillReadings })}</legend>
      {rows.length === 0 && <p>{stillWords('noReadingCan')}</p>}
      {rows.map(({ definition, reading }) => {
        const on = chosen.includes(definition.id);
        const text = formatReading(reading, definition.digits);
        return (
          <label key={definition.id}>
            <input
              type="checkbox"
              checked={on}
              disabled={!on && chosen.length >= mostStillReadings}
              onChange={() => onToggle(definition.id)}
            />
            <span>{definition.label}</span>
            <small>
              {text.value} {text.unit}
              {text.doubtful && `, ${text.doubt}`}
            </small>
          </label>
        );
      })}
    </fieldset>
  );
}

interface SavedProps {
  readonly path: string;
  readonly name: string;
  /** Address of the same picture, to download it. */
  readonly download: string;
}

function SavedStill({ path, name, download }: SavedProps) {
  return (
    <output>
      {rich(
        stillWords.parts('savedDownloadCopy', {
          path,
          b: (inside) => <b>{inside}</b>,
          a: (inside) => (
            <a href={download} download={name}>
              {inside}
            </a>
          ),
        }),
      )}
    </output>
  );
}
