import { useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { composePairStill } from '#core/exporting/compose-still';
import { pairExportName } from '#core/exporting/export-name';
import { exportSource, usualReadings } from '#core/exporting/export-source';
import { Dialog } from '../ui/dialog';
import { drawComposition } from '../export/draw-composition';
import { measureInWindow, pictureJob } from '../export/make-exports';
import { SavedList } from '../export/saved-list';
import { useConsent } from '../export/use-consent';
import { useSaving } from '../export/use-saving';
import { keepInViewStore } from '../open-swim/keep-in-view';
import { pairFrames, usePair } from './pair-session';
import { pairWords } from '#core/words/pair';

/** Readings on each side; two pictures share the room of one. Our choice. */
const readingsEach = 3;
/** Width of the picture shown in the dialog, pixels. */
const shownWidth = 760;

/** The frames both stages show, side by side as one annotated picture. */
export function PairStill({ onClose }: { readonly onClose: () => void }) {
  const session = usePair();
  const preview = useRef<HTMLCanvasElement>(null);
  const saver = useSaving(session.host);
  const { mayShow, question, used } = useConsent(session.swims);
  const [trouble, setTrouble] = useState<string | null>(null);
  const filmA = useStore(session.swims[0].film, ({ source }) => source);
  const filmB = useStore(session.swims[1].film, ({ source }) => source);
  const films = useMemo(() => [filmA, filmB], [filmA, filmB]);
  const { composition, name } = useMemo(() => {
    const frames = pairFrames(session);
    const [a, b] = [0, 1].map((which) => {
      const bench = session.swims[which === 0 ? 0 : 1];
      const source = exportSource(bench.document.swim(), bench.known.getState());
      return { source, frame: frames[which === 0 ? 0 : 1], chosen: usualReadings(source, readingsEach) };
    });
    if (!a || !b) throw new Error('a pair has two swims');
    return {
      composition: composePairStill([a, b], measureInWindow(), keepInViewStore.getState().keep),
      name: pairExportName(
        a.source.swim.card,
        b.source.swim.card,
        [pairWords('frames', { frame: a.frame + 1, frame2: b.frame + 1 })],
        'png',
      ),
    };
  }, [session]);

  useEffect(() => {
    const canvas = preview.current;
    if (!canvas) return;
    const gone = new AbortController();
    drawComposition(canvas, composition, {
      scale: shownWidth / composition.width,
      sources: films,
      signal: gone.signal,
    }).catch((problem: unknown) => {
      if (gone.signal.aborted) return;
      if (!(problem instanceof Error)) throw problem;
      setTrouble(pairWords('pictureCantShown', { message: problem.message }));
    });
    return () => gone.abort();
  }, [composition, films]);

  const { saving } = saver;
  const busy = saving.kind === 'saving';
  const missing = films.includes(null);
  const said = trouble ?? (saving.kind === 'ended' ? saving.trouble : null);
  return (
    <Dialog title={pairWords('stillBothSwims')} wide onCancel={onClose}>
      <canvas
        ref={preview}
        className="pair-still-preview"
        role="img"
        aria-label={pairWords('stillWillSaved')}
      />
      {missing && <p>{pairWords('filmOneSwimNot')}</p>}
      {question}
      {said && (
        <p className="message message-trouble" role="alert">
          {said}
        </p>
      )}
      <SavedList files={saver.files} host={session.host} />
      <footer className="dialog-foot">
        <button
          type="button"
          className="primary"
          disabled={busy || missing || !mayShow}
          onClick={() => void saver.save([pictureJob(name, () => composition, films)]).then(used)}
        >
          {busy ? pairWords('saving') : pairWords('saveStill')}
        </button>
        <button type="button" onClick={onClose}>
          {pairWords('close')}
        </button>
      </footer>
    </Dialog>
  );
}
