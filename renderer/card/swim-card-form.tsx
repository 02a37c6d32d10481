import {
  aids,
  armPositions,
  efforts,
  sidesUp,
  strokes,
  type SwimCard,
  views,
} from '#core/swim-file/swim-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { aidWords, armWords, sideWords, strokeWords, viewWords } from '#core/swim-file/card-words';
import { ConditionsForm } from './conditions-form';
import { ConsentWords } from './consent-words';
import { Pick } from './pick';
import { sentence } from './sentence';
import { withStroke } from './with-stroke';
import { cardFormWords } from '#core/words/card-form';

const effortWords = (effort: (typeof efforts)[number] | 'not-said'): string =>
  effort === 'not-said' ? cardFormWords('notSaid2') : effort;

interface Props {
  readonly card: SwimCard;
  readonly squad: Squad;
  readonly onChange: (card: SwimCard) => void;
}

/** What the coach says of a swim: who, when, what was swum and how it was filmed. */
export function SwimCardForm({ card, squad, onChange }: Props) {
  const set = (said: Partial<SwimCard>): void => onChange({ ...card, ...said });
  const known = squad.swimmers.find((each) => each.id === card.swimmerId) ?? null;
  return (
    <div className="card-form">
      <label>
        {cardFormWords('swimmer')}
        <input
          list="squad-names"
          value={card.swimmerName}
          maxLength={120}
          autoComplete="off"
          placeholder={cardFormWords('pickOrTypeNew')}
          onChange={(event) => {
            const name = event.target.value;
            const swimmer = squad.swimmers.find(
              (each) => each.name.toLocaleLowerCase() === name.trim().toLocaleLowerCase(),
            );
            set({ swimmerName: name, swimmerId: swimmer?.id ?? null });
          }}
        />
        <datalist id="squad-names">
          {squad.swimmers.map((each) => (
            <option key={each.id} value={each.name} />
          ))}
        </datalist>
      </label>
      <label>
        {cardFormWords('date')}
        <input
          type="date"
          required
          value={card.date}
          onChange={(event) => event.target.value && set({ date: event.target.value })}
        />
      </label>
      <Pick
        label={cardFormWords('filmedFrom')}
        value={card.view}
        choices={views}
        words={(view) => viewWords[view]}
        onPick={(view) => set({ view })}
      />
      <Pick
        label={cardFormWords('stroke')}
        value={card.stroke}
        choices={strokes}
        words={(stroke) => strokeWords[stroke]}
        onPick={(stroke) => onChange(withStroke(card, stroke))}
      />
      <label className="two">
        {cardFormWords('drill')}
        <input
          value={card.drill}
          maxLength={200}
          placeholder={cardFormWords('yourOwnWordsEmpty')}
          onChange={(event) => set({ drill: event.target.value })}
        />
      </label>
      <Pick
        label={cardFormWords('arms')}
        value={card.arms}
        choices={armPositions}
        words={(arms) => armWords[arms]}
        onPick={(arms) => set({ arms })}
      />
      <Pick
        label={cardFormWords('sideUp')}
        value={card.sideUp}
        choices={sidesUp}
        words={(side) => sideWords[side]}
        onPick={(sideUp) => set({ sideUp })}
      />
      <Pick
        label={cardFormWords('effort')}
        value={card.effort ?? 'not-said'}
        choices={['not-said', ...efforts] as const}
        words={effortWords}
        onPick={(effort) => set({ effort: effort === 'not-said' ? null : effort })}
      />
      <fieldset className="two">
        <legend>{cardFormWords('aids')}</legend>
        {aids.map((aid) => (
          <label key={aid}>
            <input
              type="checkbox"
              checked={card.aids.includes(aid)}
              onChange={(event) =>
                set({
                  aids: event.target.checked ? [...card.aids, aid] : card.aids.filter((each) => each !== aid),
                })
              }
            />
            {sentence(aidWords[aid])}
          </label>
        ))}
      </fieldset>
      <label>
        {cardFormWords('distanceSwumM')}
        <input
          type="number"
          min="1"
          max="10000"
          step="any"
          value={card.distanceMetres ?? ''}
          onChange={(event) => {
            const metres = event.target.valueAsNumber;
            set({ distanceMetres: metres > 0 && metres <= 10_000 ? metres : null });
          }}
        />
      </label>
      <ConditionsForm conditions={card.conditions} onChange={(conditions) => set({ conditions })} />
      <label className="wide">
        {cardFormWords('note')}
        <textarea
          rows={2}
          maxLength={4000}
          value={card.note}
          onChange={(event) => set({ note: event.target.value })}
        />
      </label>
      {card.swimmerName.trim() !== '' && (
        <p className="caution wide">
          {known ? (
            <ConsentWords swimmer={known} />
          ) : (
            cardFormWords('newConsentBirth', { swimmerName: card.swimmerName.trim() })
          )}
        </p>
      )}
    </div>
  );
}
