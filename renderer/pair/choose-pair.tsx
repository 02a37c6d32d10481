import { useId, useMemo, useState } from 'react';
import { unlikeCards } from '#core/compare/like-with-like';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { PageBar } from '../ui/page-bar';
import type { ScreenProps } from '../ui/screen-props';
import { shelfRoute } from '../ui/use-route';
import { aidsWords, cardWords, dayWords } from '#core/swim-file/card-words';
import type { HostClient } from '../host/host-client';
import { swimWords } from '../swims/filter-swims';
import { LibraryTrouble } from '../swims/library-messages';
import { useLibrary } from '../swims/use-library';
import { unlikeWords } from './difference-words';
import '../shelf/shelf.css';
import './choose-pair.css';
import { pairWords } from '#core/words/pair';

interface Props extends Pick<ScreenProps, 'host' | 'go'> {
  /** The swim already chosen, as from the bench; null: none. */
  readonly first: string | null;
}

const newestFirst = (p: SwimSummary, q: SwimSummary): number =>
  p.card.date < q.card.date ? 1 : p.card.date > q.card.date ? -1 : p.id < q.id ? -1 : 1;

/** Swims drawn in each list before more are asked for: thousands at once would keep a window busy. Our default. */
const drawnAtOnce = 60;

/** Chooses the two swims of a pair; the same one twice makes two stretches of it. */
export function ChoosePair({ first, host, go }: Props) {
  const { library, trouble, load } = useLibrary(host);
  const [chosenA, setA] = useState<string | null>(first);
  const [chosenB, setB] = useState<string | null>(null);
  const swims = useMemo(() => [...(library?.swims ?? [])].sort(newestFirst), [library]);
  const [text, setText] = useState('');
  const [most, setMost] = useState(drawnAtOnce);
  const sought = useMemo(() => {
    const words = text.toLocaleLowerCase().split(/\s+/).filter(Boolean);
    return (swim: SwimSummary): boolean => {
      const said = `${swim.card.swimmerName.toLocaleLowerCase()} ${swimWords(swim)}`;
      return words.every((word) => said.includes(word));
    };
  }, [text]);
  const a = swims.find(({ id }) => id === chosenA) ?? null;
  const b = swims.find(({ id }) => id === chosenB) ?? null;
  // likely partners first: the same swimmer, then what was swum alike
  const partners = useMemo(() => {
    if (!a) return swims;
    const strangeness = (swim: SwimSummary): number =>
      (swim.card.swimmerName === a.card.swimmerName ? 0 : 100) + unlikeCards(a.card, swim.card).length;
    const known = new Map(swims.map((swim) => [swim, strangeness(swim)]));
    return [...swims].sort((p, q) => (known.get(p) ?? 0) - (known.get(q) ?? 0));
  }, [a, swims]);
  const open = (): void => {
    if (a && b) go({ screen: 'pair', ids: [a.id, b.id] });
  };
  return (
    <div className="choose-pair">
      <PageBar
        title={pairWords('pair')}
        back={
          <button type="button" onClick={() => go(shelfRoute)}>
            {pairWords('shelf')}
          </button>
        }
      />
      <main>
        {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
        {library && swims.length === 0 && <p>{pairWords('thereNoSwims')}</p>}
        {swims.length > 0 && (
          <form
            onSubmit={(event) => {
              event.preventDefault();
              open();
            }}
          >
            <p>{pairWords('chooseTwoSwims')}</p>
            <label className="choose-search">
              {pairWords('findSwim')}
              <input
                type="search"
                placeholder={pairWords('swimmerDrillAids')}
                value={text}
                onChange={(event) => {
                  setText(event.target.value);
                  setMost(drawnAtOnce);
                }}
              />
            </label>
            <div className="choose-lists">
              {(['A', 'B'] as const).map((name) => {
                const chosen = name === 'A' ? chosenA : chosenB;
                const found = (name === 'A' ? swims : partners).filter(
                  (swim) => swim.id === chosen || sought(swim),
                );
                return (
                  <SwimChoice
                    key={name}
                    name={name}
                    swims={found.filter(({ id }, at) => at < most || id === chosen)}
                    left={found.length - most}
                    onMore={() => setMost(most + drawnAtOnce)}
                    chosen={chosen}
                    host={host}
                    onChoose={name === 'A' ? setA : setB}
                    beside={name === 'A' ? null : a}
                  />
                );
              })}
            </div>
            <div className="choose-foot">
              <p>
                {a && b
                  ? unlikeCards(a.card, b.card).length > 0
                    ? pairWords('notAlike', { unlike: unlikeWords(unlikeCards(a.card, b.card)) })
                    : pairWords('swumFilmedAlike')
                  : ''}
              </p>
              <button type="submit" className="primary" disabled={!a || !b}>
                {pairWords('openPair')}
              </button>
            </div>
          </form>
        )}
      </main>
    </div>
  );
}

interface ChoiceProps {
  readonly name: 'A' | 'B';
  readonly swims: readonly SwimSummary[];
  /** How many more could be shown; zero or less: none. */
  readonly left: number;
  readonly onMore: () => void;
  readonly chosen: string | null;
  readonly host: HostClient;
  readonly beside: SwimSummary | null;
  readonly onChoose: (id: string) => void;
}

function SwimChoice({ name, swims, left, onMore, chosen, host, beside, onChoose }: ChoiceProps) {
  const group = useId();
  return (
    <fieldset>
      <legend>{name}</legend>
      {swims.map((swim) => {
        const unlike = beside ? unlikeCards(beside.card, swim.card) : [];
        return (
          <label key={swim.id} className={chosen === swim.id ? 'chosen' : undefined}>
            <input
              type="radio"
              name={group}
              checked={chosen === swim.id}
              onChange={() => onChoose(swim.id)}
            />
            {swim.hasThumbnail ? (
              <img src={host.thumbnailAddress(swim.id)} alt="" loading="lazy" decoding="async" />
            ) : (
              <span className="choose-blank" />
            )}
            <span>
              <strong>{cardWords(swim.card).title}</strong>
              <small>
                {pairWords('events', {
                  day: dayWords(swim.card.date),
                  aids: aidsWords(swim.card.aids),
                  eventCount: swim.eventCount,
                  unlike:
                    beside?.id === swim.id
                      ? ` ${pairWords('sameSwimTwoStretches')}`
                      : unlike.length > 0
                        ? ` ${pairWords('other', { unlike: unlikeWords(unlike) })}`
                        : '',
                })}
              </small>
            </span>
          </label>
        );
      })}
      {swims.length === 0 && <p>{pairWords('noSwimLike')}</p>}
      {left > 0 && (
        <button type="button" onClick={onMore}>
          {pairWords('showMore', { left: left.toLocaleString() })}
        </button>
      )}
    </fieldset>
  );
}
