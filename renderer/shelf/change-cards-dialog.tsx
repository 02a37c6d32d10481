import { useEffect, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import { cardsChangedSchema, type SharedCard } from '#core/host-contract/operations/many-swims-operations';
import type { Squad } from '#core/swim-file/squad-schema';
import { aids } from '#core/swim-file/swim-schema';
import { Dialog } from '../ui/dialog';
import { aidWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';
import { enrolSwimmer } from '../card/write-swimmer';
import { followJob } from '../host/follow-job';
import type { HostClient } from '../host/host-client';
import { makeId } from '../host/make-id';
import type { ShelfUndo } from './use-shelf-undo';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly ids: readonly string[];
  readonly squad: Squad;
  readonly today: string;
  readonly host: HostClient;
  readonly undo: ShelfUndo;
  readonly load: () => Promise<void>;
  readonly onClose: () => void;
}

type Field = 'swimmer' | 'date' | 'drill' | 'aids';

/** Says the same of many swims' cards at once; only what is ticked is changed, and one undo takes it all back. */
export function ChangeCardsDialog({ ids, squad, today, host, undo, load, onClose }: Props) {
  const [ticked, setTicked] = useState<ReadonlySet<Field>>(new Set());
  const [said, setSaid] = useState({ swimmerName: '', date: today, drill: '' });
  const [chosenAids, setAids] = useState<readonly (typeof aids)[number][]>([]);
  const [working, setWorking] = useState<{ readonly share: number; readonly stop: AbortController } | null>(
    null,
  );
  const [trouble, setTrouble] = useState<HostError | null>(null);
  useEffect(() => () => working?.stop.abort(), [working?.stop]);

  const run = async (changes: { id: string; card: SharedCard }[], stop: AbortController) => {
    const started = await host.call('swims/change', { changes });
    if (!started.ok) return started;
    return followJob(host, started.value.jobId, {
      result: cardsChangedSchema,
      signal: stop.signal,
      onProgress: (share) => setWorking({ share: share ?? 0, stop }),
    });
  };
  const change = async (): Promise<void> => {
    const stop = new AbortController();
    setTrouble(null);
    setWorking({ share: 0, stop });
    const card: SharedCard = {};
    if (ticked.has('swimmer')) {
      const swimmer = await enrolSwimmer(host, said.swimmerName, makeId);
      if (!swimmer.ok) {
        setWorking(null);
        return setTrouble(swimmer.error);
      }
      card.swimmerId = swimmer.value?.id ?? null;
      card.swimmerName = swimmer.value?.name ?? '';
    }
    if (ticked.has('date')) card.date = said.date;
    if (ticked.has('drill')) card.drill = said.drill.trim();
    if (ticked.has('aids')) card.aids = [...chosenAids];
    const done = await run(
      ids.map((id) => ({ id, card })),
      stop,
    );
    setWorking(null);
    await load();
    if (!done.ok) return setTrouble(done.error);
    const { before, failed } = done.value;
    if (before.length > 0)
      undo.did(shelfWords('cardsChanged', { before: before.length }), {
        undone: shelfWords('cardsSayWhat'),
        undo: async () => {
          const back = await run(before, new AbortController());
          await load();
          return back.ok ? null : `${errorWords(back.error).what} ${errorWords(back.error).todo}`;
        },
      });
    if (failed[0]) setTrouble(failed[0].error);
    else onClose();
  };

  const tick = (field: Field, label: string) => (
    <label>
      <input
        type="checkbox"
        checked={ticked.has(field)}
        onChange={(event) => {
          const next = new Set(ticked);
          if (event.target.checked) next.add(field);
          else next.delete(field);
          setTicked(next);
        }}
      />
      {label}
    </label>
  );
  return (
    <Dialog
      title={ids.length === 1 ? shelfWords('changeOneCard') : shelfWords('changeCards', { ids: ids.length })}
      onCancel={() => (working ? working.stop.abort() : onClose())}
    >
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void change();
        }}
      >
        <p>{shelfWords('tickWhatAllThem')}</p>
        {trouble && (
          <p className="message message-trouble" role="alert">
            <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
          </p>
        )}
        <div className="change-fields">
          {tick('swimmer', shelfWords('swimmer'))}
          <input
            aria-label={shelfWords('newSwimmer')}
            list="change-names"
            maxLength={120}
            autoComplete="off"
            placeholder={shelfWords('pickOrTypeName')}
            disabled={!ticked.has('swimmer')}
            value={said.swimmerName}
            onChange={(event) => setSaid({ ...said, swimmerName: event.target.value })}
          />
          <datalist id="change-names">
            {squad.swimmers.map((each) => (
              <option key={each.id} value={each.name} />
            ))}
          </datalist>
          {tick('date', shelfWords('date'))}
          <input
            aria-label={shelfWords('newDate')}
            type="date"
            required
            disabled={!ticked.has('date')}
            value={said.date}
            onChange={(event) => event.target.value && setSaid({ ...said, date: event.target.value })}
          />
          {tick('drill', shelfWords('drill'))}
          <input
            aria-label={shelfWords('newDrill')}
            maxLength={200}
            placeholder={shelfWords('emptyPlainStroke')}
            disabled={!ticked.has('drill')}
            value={said.drill}
            onChange={(event) => setSaid({ ...said, drill: event.target.value })}
          />
          {tick('aids', shelfWords('aids'))}
          <NewAids disabled={!ticked.has('aids')} chosen={chosenAids} onChange={setAids} />
        </div>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={ticked.size === 0 || working !== null}>
            {shelfWords('changeAll', { ids: ids.length })}
          </button>
          <button type="button" onClick={() => (working ? working.stop.abort() : onClose())}>
            {working ? shelfWords('stop') : shelfWords('leaveThey')}
          </button>
          {working && <progress value={working.share} aria-label={shelfWords('changed')} />}
        </footer>
      </form>
    </Dialog>
  );
}

interface AidsProps {
  readonly disabled: boolean;
  readonly chosen: readonly (typeof aids)[number][];
  readonly onChange: (chosen: readonly (typeof aids)[number][]) => void;
}

function NewAids({ disabled, chosen, onChange }: AidsProps) {
  return (
    <fieldset disabled={disabled} aria-label={shelfWords('newAids')}>
      {aids.map((aid) => (
        <label key={aid}>
          <input
            type="checkbox"
            checked={chosen.includes(aid)}
            onChange={(event) =>
              onChange(event.target.checked ? [...chosen, aid] : chosen.filter((each) => each !== aid))
            }
          />
          {sentence(aidWords[aid])}
        </label>
      ))}
    </fieldset>
  );
}
