import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { type Handout, longestCue } from '#core/handout/handout-file';
import { drillLibrary } from '#core/practice/drill-library';
import type { Change } from '../documents/step-history';
import { handoutWords } from '#core/words/handout';

interface Props {
  readonly cue: string;
  readonly drill: string;
  readonly change: (name: string, edit: Change<Handout>) => void;
}

/** Our choice: long enough that a word is one step of undo, short enough to see the page follow. */
const typingPauseMs = 500;

/** The one cue, in the coach's own words; what the drill's own card says to watch is offered. */
export function CueChoice({ cue, drill, change }: Props) {
  const list = useId();
  const [words, setWords] = useState(cue);
  // an undone step, or another window's words; a space just typed stays
  useEffect(() => setWords((now) => (now.trim() === cue ? now : cue)), [cue]);
  const offered = useMemo(() => {
    const wanted = drill.toLocaleLowerCase();
    const own = drillLibrary.filter(({ name }) => wanted !== '' && name.toLocaleLowerCase() === wanted);
    const all = (own.length > 0 ? own : drillLibrary).flatMap(({ watch }) => watch);
    return [...new Set(all)].filter((each) => each.length <= longestCue);
  }, [drill]);
  const keep = (): void => {
    const trimmed = words.trim();
    if (trimmed !== cue)
      change(handoutWords('cue'), (draft) => {
        draft.cue = trimmed;
      });
  };
  // the page shows the cue as it is typed, a pause after the last letter
  const latest = useRef(keep);
  latest.current = keep;
  useEffect(() => {
    if (words.trim() === cue) return;
    const pause = setTimeout(() => latest.current(), typingPauseMs);
    return () => clearTimeout(pause);
  }, [words, cue]);
  return (
    <fieldset>
      <legend>{handoutWords('oneCue')}</legend>
      <input
        className="handout-cue"
        aria-label={handoutWords('cueYourOwnWords')}
        value={words}
        maxLength={longestCue}
        list={list}
        placeholder={handoutWords('oneThingThink')}
        onChange={(event) => setWords(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === 'Enter') keep();
        }}
      />
      <datalist id={list}>
        {offered.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
    </fieldset>
  );
}
