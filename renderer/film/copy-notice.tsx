import { useState } from 'react';
import { useStore } from 'zustand';
import { damageWords } from '#core/timeline/damage-words';
import { useOpenSwim } from '../open-swim/open-swim';
import { CopyPieces, WhatIsReady } from './copy-pieces';
import { filmWords } from '#core/words/film';

/** The working copy as the coach sees it: being made, offered where stepping is slow. Over the stage, never in the way. */
export function CopyNotice() {
  const session = useOpenSwim();
  const { copying, slowMs, broken, checked, source, from } = useStore(session.film);
  const [declined, setDeclined] = useState(false);
  if (copying) {
    const percent = copying.share === null ? null : Math.round(copying.share * 100);
    return (
      <div className="copy-notice">
        <p>{copying.why === 'needed' ? filmWords('workingCopyBeing') : filmWords('workingCopyBeingMade')}</p>
        <div className="copy-progress">
          {copying.pieces.length > 0 ? (
            <CopyPieces {...copying} />
          ) : (
            <progress value={copying.share ?? undefined} aria-label={filmWords('workingCopy')} />
          )}
          <output>
            {copying.words}
            {percent === null ? '' : `, ${percent} %`}
            {copying.pieces.length > 0 && <WhatIsReady {...copying} />}
          </output>
          <button type="button" onClick={copying.stop}>
            {filmWords('stop')}
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
          ? filmWords('clipDamagedWorking', { damage: damage ?? filmWords('soFarWindowCouldnt', { broken }) })
          : filmWords('stepsTakeAbout', { slowMs: Math.round(slowMs ?? 0) })}
      </p>
      <div className="copy-progress">
        <button type="button" onClick={() => void session.keeper.makeCopy('slow')}>
          {filmWords('makeWorkingCopy')}
        </button>
        <button type="button" onClick={() => setDeclined(true)}>
          {filmWords('notNow')}
        </button>
      </div>
    </div>
  );
}
