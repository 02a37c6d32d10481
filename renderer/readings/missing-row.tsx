import { useState } from 'react';
import type { Reading, ReadingDefinition } from '#core/measures/reading';
import { reasonWords } from '#core/measures/reason-words';
import { useOpenSwim } from '../open-swim/open-swim';
import { AboutButton } from './about-button';
import { PinBar } from './pin-bar';
import { placeFor } from './place-for';
import { ReadingDetails } from './reading-details';
import { readingsWords } from '#core/words/readings';

interface Props {
  readonly definition: ReadingDefinition;
  readonly reading: Extract<Reading, { status: 'missing' }>;
  /** On the short list the reason stands only where nothing on the bench can mend it. */
  readonly short: boolean;
}

/** A reading that can't be had yet: why, and the way to it. */
export function MissingRow({ definition, reading, short }: Props) {
  const session = useOpenSwim();
  const [open, setOpen] = useState(false);
  const [first] = reading.reasons;
  const place = first ? placeFor(session, first) : null;
  const contradicted = first?.code === 'marks-contradict';
  const why = reading.reasons.map(reasonWords).slice(0, 2).join(' · ');
  const toPlace = readingsWords('placeWhatNeeds', { label: definition.label });
  return (
    <li className={`reading missing${short ? ' large' : ''}`} data-reading={reading.id}>
      <div className="reading-head">
        {short && place && !contradicted ? (
          <button type="button" className="reading-main" onClick={place} title={`${why}. ${toPlace}`}>
            <span className="reading-label">{definition.label}</span>
            <span className="reading-value" role="img" aria-label={readingsWords('notYetThere')}>
              –
            </span>
          </button>
        ) : (
          <>
            <div className="reading-name">
              <span>{definition.label}</span>
              <small>{why}</small>
            </div>
            {place && (
              <button
                type="button"
                className="place"
                onClick={place}
                aria-label={
                  contradicted ? readingsWords('showMarksKeep', { label: definition.label }) : toPlace
                }
              >
                {readingsWords(contradicted ? 'show' : 'place')}
              </button>
            )}
          </>
        )}
        <AboutButton label={definition.label} open={open} onOpen={setOpen} />
      </div>
      {open && (
        <>
          {short && place && <p className="reading-notes">{why}</p>}
          <ReadingDetails definition={definition} reading={null} unit="" />
          <PinBar id={reading.id} label={definition.label} />
        </>
      )}
    </li>
  );
}
