import { patternPhrase } from '#core/practice/stroke-pattern';
import type { Practice } from '#core/practice/practice-schema';
import { CommandButton } from '../ui/command-button';
import type { DeckPlace } from './use-deck-place';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly practice: Practice;
  readonly at: NonNullable<DeckPlace['at']>;
  readonly toRepeat: DeckPlace['toRepeat'];
  /** Null where there is one watch. */
  readonly onStartAll: (() => void) | null;
}

/** Which repeat is swum now, what is planned of it, and the way to the others. */
export function DeckRepeats({ practice, at: { item, planned, now }, toRepeat, onStartAll }: Props) {
  const done = (repeat: number): boolean =>
    practice.log.some((each) => each.itemId === item.id && each.repeat === repeat);
  return (
    <>
      <div className="deck-repeats">
        <CommandButton command="before" className="deck-step">
          ‹<span className="unseen">{setsWords('repeatBefore')}</span>
        </CommandButton>
        <p aria-live="polite">
          <strong>{setsWords('repeat', { repeat: now.repeat + 1, planned: planned.length })}</strong>
          <span>
            {now.count !== null
              ? setsWords('mStrokes', {
                  distanceMetres: now.distanceMetres,
                  count: now.count,
                  patternPhrase: now.pattern ? ` · ${patternPhrase(now.pattern.runs)}` : '',
                  effort: item.effort ? ` · ${item.effort}` : '',
                })
              : `${now.distanceMetres} m${now.pattern ? ` · ${patternPhrase(now.pattern.runs)}` : ''}${item.effort ? ` · ${item.effort}` : ''}`}
          </span>
          {item.note !== '' && <span>{item.note}</span>}
        </p>
        <CommandButton command="next" className="deck-step">
          ›<span className="unseen">{setsWords('nextRepeat')}</span>
        </CommandButton>
      </div>
      <div className="deck-tools">
        <ol className="deck-dots" aria-label={setsWords('repeats')}>
          {planned.map((each) => (
            <li key={each.repeat}>
              <button
                type="button"
                aria-current={each.repeat === now.repeat ? 'step' : undefined}
                onClick={() => toRepeat(each.repeat)}
              >
                {each.repeat + 1}
                {done(each.repeat) ? ' ✓' : ''}
              </button>
            </li>
          ))}
        </ol>
        {onStartAll && (
          <button type="button" className="deck-start-all" onClick={onStartAll}>
            {setsWords('startEveryWatch')}
          </button>
        )}
      </div>
    </>
  );
}
