import { useCallback, useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { exportSource } from '#core/exporting/export-source';
import { composeHandout } from '#core/handout/compose-handout';
import { type Handout, papers } from '#core/handout/handout-file';
import type { Change } from '../documents/step-history';
import { KeySheetButton } from '../ui/key-sheet-button';
import { SaveState } from '../documents/save-state';
import { ScreenMenu } from '../ui/screen-menu';
import { UndoButtons } from '../ui/undo-buttons';
import { useCommandKeys } from '../ui/use-command-keys';
import { useTip } from '../ui/use-tip';
import { clockOf, useOpenSwim } from '../open-swim/open-swim';
import { cardWords } from '#core/swim-file/card-words';
import { KickDoubtCaution } from '../export/kick-doubt-caution';
import { SavedList } from '../export/saved-list';
import { useConsent } from '../export/use-consent';
import { useSaving } from '../export/use-saving';
import { CueChoice } from './cue-choice';
import { FrameChoice } from './frame-choice';
import { type HandoutLetters, useLettersFor } from './handout-letters';
import { HandoutPreview } from './handout-preview';
import { handoutJobs } from './make-handout-files';
import { handoutCommands } from './handout-commands';
import type { OpenHandout } from './open-handout';
import { ReadingChoice } from './reading-choice';
import { handoutWords } from '#core/words/handout';

interface Props {
  readonly open: OpenHandout;
  readonly letters: HandoutLetters;
  readonly onLeave: () => void;
}

const paperWords: Readonly<Record<Handout['paper'], string>> = { a4: 'A4', letter: handoutWords('letter') };

/** The choices on the left, the page as it will print on the right. */
export function HandoutDesk({ open, letters: own, onLeave }: Props) {
  const tip = useTip();
  const session = useOpenSwim();
  const { document } = open;
  const { value: handout } = useStore(document.store);
  const swim = useStore(session.document.store, (state) => state.swim);
  const { swimmer, markingError } = useStore(session.known);
  const film = useStore(session.film);
  const source = useMemo(() => exportSource(swim, { swimmer, markingError }), [swim, swimmer, markingError]);
  const written = `${swim.card.swimmerName}${swim.card.drill}${handout.cue}`;
  const letters = useLettersFor(written, own, session.host);
  const composition = useMemo(() => {
    const page = composeHandout(handout, source, letters.measure);
    return { ...page, over: letters.outlined(page.over) };
  }, [handout, source, letters]);
  const missing = useMemo(() => letters.missing(written), [written, letters]);
  const sessions = useMemo(() => [session], [session]);
  const { mayShow, question, used } = useConsent(sessions);
  const { saving, files, save, cancel } = useSaving(session.host);
  const busy = saving.kind === 'saving';
  const ready = film.source !== null && mayShow;

  const change = useCallback(
    (name: string, edit: Change<Handout>): void => {
      document.run({ name, change: edit });
    },
    [document],
  );
  const savePage = useCallback(
    (kinds: readonly ('pdf' | 'png')[]): void => {
      const jobs = handoutJobs({ composition, letters, film: film.source, card: swim.card });
      void save(kinds.map((kind) => jobs[kind])).then(used);
    },
    [composition, letters, film.source, swim.card, save, used],
  );
  const latest = useRef({ savePage, ready, busy });
  useEffect(() => {
    latest.current = { savePage, ready, busy };
  }, [savePage, ready, busy]);
  const commands = useMemo(
    () => handoutCommands({ document, say: session.say, latest, change, onLeave }),
    [document, session, change, onLeave],
  );
  useCommandKeys(handoutWords('handout'), commands);
  const words = cardWords(swim.card);
  const count = clockOf(swim).table.starts.length;

  return (
    <div className="handout">
      <header className="bench-bar">
        <button type="button" onClick={onLeave} title={tip('to-bench', handoutWords('backBench'))}>
          {handoutWords('bench')}
        </button>
        <h1 title={[words.title, ...words.facts].join(' · ')}>
          <strong>{handoutWords('handout')}</strong> <small>{words.title}</small>
          {swim.card.invented && <em className="invented">{handoutWords('invented')}</em>}
        </h1>
        <SaveState autosave={open.autosave} what={handoutWords('handout2')} />
        <UndoButtons document={document} />
        <ScreenMenu />
        <KeySheetButton />
      </header>
      <main className="handout-choices">
        <CueChoice cue={handout.cue} drill={swim.card.drill} change={change} />
        <FrameChoice handout={handout} source={source} count={count} change={change} />
        <ReadingChoice handout={handout} source={source} change={change} />
        <fieldset>
          <legend>{handoutWords('paper2')}</legend>
          <div className="handout-papers">
            {papers.map((paper) => (
              <label key={paper}>
                <input
                  type="radio"
                  name="paper"
                  checked={handout.paper === paper}
                  onChange={() =>
                    change(handoutWords('paper'), (draft) => {
                      draft.paper = paper;
                    })
                  }
                />
                {paperWords[paper]}
              </label>
            ))}
          </div>
        </fieldset>
      </main>
      <HandoutPreview
        composition={composition}
        film={film.source}
        title={handoutWords('pageWillPrint', { paper: paperWords[handout.paper] })}
      />
      <footer className="handout-foot">
        {film.trouble && (
          <p role="alert" className="message message-trouble">
            {handoutWords('filmNotHereSo')}
          </p>
        )}
        {missing.length > 0 && (
          <p role="alert" className="message message-trouble">
            {handoutWords('pageCantPrint', { missing: missing.join(' ') })}
          </p>
        )}
        <KickDoubtCaution readings={source.readings} slowdown={swim.clip.slowdown.factor} />
        {question}
        <SavedList files={files} host={session.host} />
        {saving.kind === 'ended' && saving.trouble && (
          <p role="alert" className="message message-trouble">
            {saving.trouble}
          </p>
        )}
        <div className="dialog-foot">
          <button
            type="button"
            className="primary"
            disabled={!ready || busy}
            onClick={() => savePage(['pdf'])}
            title={tip('save-pdf', handoutWords('saveHandoutPdf'))}
          >
            {handoutWords('savePdf')}
          </button>
          <button
            type="button"
            disabled={!ready || busy}
            onClick={() => savePage(['png'])}
            title={tip('save-png', handoutWords('saveHandoutPng'))}
          >
            {handoutWords('savePng')}
          </button>
          {busy && (
            <button type="button" onClick={cancel}>
              {handoutWords('cancel')}
            </button>
          )}
        </div>
      </footer>
    </div>
  );
}
