import { useState } from 'react';
import { useStore } from 'zustand';
import { damageWords } from '#core/timeline/damage-words';
import { useOpenSwim } from '../open-swim/open-swim';
import { CopyPieces, WhatIsReady } from './copy-pieces';

/** The working copy as the coach sees it: being made, offered where stepping is slow. Over the stage, never in the way. */
export function CopyNotice() {
  const session = useOpenSwim();
  const { copying, slowMs, broken, checked, source, from } = useStore(session.film);
  const [declined, setDeclined] = useState(false);
  if (copying) {
    const percent = copying.share === null ? null : Math.round(copying.share * 100);
    return (
      <div className="copy-notice">
        <p>
          {copying.why === 'needed'
            ? 'A working copy is being made, as this window can’t decode the clip. Ready frames step at once, others come as stills.'
            : 'A working copy is being made; go on with the clip meanwhile. It is taken over at the same frame.'}
        </p>
        <div className="copy-progress">
          {copying.pieces.length > 0 ? (
            <CopyPieces {...copying} />
          ) : (
            <progress value={copying.share ?? undefined} aria-label="Working copy" />
          )}
          <output>
            {copying.words}
            {percent === null ? '' : `, ${percent} %`}
            {copying.pieces.length > 0 && <WhatIsReady {...copying} />}
          </output>
          <button type="button" onClick={copying.stop}>
            Stop
          </button>
        </div>
      </div>
    );
  }
  const damage = checked && damageWords(checked);
  if ((slowMs === null && broken === 0) || from === 'copy' || declined || !source) return null;
  return (
    <div className="copy-notice">
      <p>
        {broken > 0
          ? `This clip is damaged: ${damage ?? `so far this window couldn’t decode ${broken === 1 ? 'one picture' : `${broken} pictures`}`}. A working copy patches up what it can. Submark makes it in the background, and its frames are the same.`
          : `Steps take about ${Math.round(slowMs ?? 0)} ms on this clip. A working copy makes them quick; it is made in the background and its frames are the same.`}
      </p>
      <div className="copy-progress">
        <button type="button" onClick={() => void session.keeper.makeCopy('slow')}>
          Make a working copy
        </button>
        <button type="button" onClick={() => setDeclined(true)}>
          Not now
        </button>
      </div>
    </div>
  );
}
