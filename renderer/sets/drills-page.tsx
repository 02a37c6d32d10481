import { useMemo, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { DrillBook } from '#core/practice/drill-file';
import type { Drill } from '#core/practice/drill-schema';
import { patternPhrase } from '#core/practice/stroke-pattern';
import type { UsualPattern } from '#core/practice/usual-pattern';
import { PageBar } from '../ui/page-bar';
import type { Command } from '../ui/command';
import type { ScreenProps } from '../ui/screen-props';
import { useCommandKeys } from '../ui/use-command-keys';
import { useTip } from '../ui/use-tip';
import { makeId } from '../host/make-id';
import { DrillDialog } from './drill-dialog';
import { DrillFacts } from './drill-facts';
import { PatternDialog } from './pattern-dialog';
import { type Drills, useDrills } from './use-drills';
import { setsWords } from '#core/words/sets';
import { rich } from '../ui/rich';

const emptyDrill = (id: string): Drill => ({
  id,
  name: '',
  stroke: 'butterfly',
  sideUp: 'front',
  arms: 'stroking',
  aids: [],
  underwater: false,
  pattern: null,
  purpose: '',
  how: '',
  watch: [],
  readings: [],
  cautions: [],
  source: 'my own',
});

const emptyPattern = (id: string): UsualPattern => ({
  id,
  label: '',
  pattern: { runs: [{ arm: 'both', count: 8 }], perMetres: 25 },
  source: 'my own',
});

/** The drills and stroke patterns: the library's, and the coach's own to add, change and remove. */
export function DrillsPage({ host, say, go }: ScreenProps) {
  const tip = useTip();
  const drills = useDrills(host);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [drill, setDrill] = useState<Drill | null>(null);
  const [pattern, setPattern] = useState<UsualPattern | null>(null);
  const own = new Set(drills.book.drills.map(({ id }) => id));
  const shownTrouble = trouble ?? drills.trouble;

  const keep = async (change: (book: DrillBook) => DrillBook): Promise<boolean> => {
    const failed = await drills.change(change);
    setTrouble(failed);
    return failed === null;
  };
  const removeDrill = async (gone: Drill): Promise<void> => {
    const put = (book: DrillBook): DrillBook => ({
      ...book,
      drills: [...book.drills.filter(({ id }) => id !== gone.id), gone],
    });
    const done = await keep((book) => ({ ...book, drills: book.drills.filter(({ id }) => id !== gone.id) }));
    if (done)
      say(setsWords('removed', { name: gone.name }), { label: setsWords('undo'), run: () => void keep(put) });
  };
  const removePattern = async (gone: UsualPattern): Promise<void> => {
    const before = drills.book.patterns;
    const done = await keep((book) => ({
      ...book,
      patterns: book.patterns.filter(({ id }) => id !== gone.id),
    }));
    if (done)
      say(setsWords('noLongerOffered', { label: gone.label }), {
        label: setsWords('undo'),
        run: () => void keep((book) => ({ ...book, patterns: before })),
      });
  };
  const commands = useMemo(
    (): readonly Command[] => [
      {
        id: 'add',
        label: setsWords('addDrill'),
        keys: ['a'],
        kind: 'never',
        run: () => setDrill(emptyDrill(makeId())),
      },
      {
        id: 'list',
        label: setsWords('allPractices'),
        keys: ['Escape'],
        kind: 'view',
        run: () => go({ screen: 'sets', ids: [] }),
      },
    ],
    [go],
  );
  useCommandKeys(setsWords('drills'), commands);
  return (
    <div className="sets">
      <PageBar
        title={setsWords('drills')}
        back={
          <button
            type="button"
            onClick={() => go({ screen: 'sets', ids: [] })}
            title={tip('list', setsWords('allPractices'))}
          >
            {setsWords('sets')}
          </button>
        }
      >
        <button
          type="button"
          className="primary"
          onClick={() => setDrill(emptyDrill(makeId()))}
          title={tip('add', setsWords('drillYourOwn'))}
        >
          {setsWords('addDrill')}
        </button>
      </PageBar>
      <main className="drills-page">
        {shownTrouble && (
          <p className="message message-trouble" role="alert">
            {errorWords(shownTrouble).what} {errorWords(shownTrouble).todo}
          </p>
        )}
        <DrillList
          drills={drills}
          own={own}
          onChange={setDrill}
          onRemove={(gone) => void removeDrill(gone)}
        />
        <h2>{setsWords('strokePatternsOffered')}</h2>
        <p className="caution">{setsWords('startingPointsYours')}</p>
        <PatternList
          patterns={drills.book.patterns}
          onChange={setPattern}
          onRemove={(gone) => void removePattern(gone)}
        />
        <button type="button" onClick={() => setPattern(emptyPattern(makeId()))}>
          {setsWords('addPattern')}
        </button>
      </main>
      {drill && (
        <DrillDialog
          key={drill.id}
          drill={drill}
          onCancel={() => setDrill(null)}
          onKeep={async (next) => {
            const done = await keep((book) => ({
              ...book,
              drills: book.drills.some(({ id }) => id === next.id)
                ? book.drills.map((each) => (each.id === next.id ? next : each))
                : [...book.drills, next],
            }));
            if (done) setDrill(null);
          }}
        />
      )}
      {pattern && (
        <PatternDialog
          key={pattern.id}
          pattern={pattern}
          onCancel={() => setPattern(null)}
          onKeep={async (next) => {
            const done = await keep((book) => ({
              ...book,
              patterns: book.patterns.some(({ id }) => id === next.id)
                ? book.patterns.map((each) => (each.id === next.id ? next : each))
                : [...book.patterns, next],
            }));
            if (done) setPattern(null);
          }}
        />
      )}
    </div>
  );
}

interface DrillListProps {
  readonly drills: Drills;
  /** Ids of the coach's own. */
  readonly own: ReadonlySet<string>;
  readonly onChange: (drill: Drill) => void;
  readonly onRemove: (drill: Drill) => void;
}

function DrillList({ drills, own, onChange, onRemove }: DrillListProps) {
  return (
    <ul className="drill-list">
      {drills.all.map((each) => (
        <li key={each.id}>
          <details>
            <summary>
              <strong>{each.name}</strong>
              {own.has(each.id) && <em className="own-tag">{setsWords('yourOwn')}</em>}
              {each.underwater && <em className="own-tag">{setsWords('underWater')}</em>}
              <span>{each.purpose}</span>
            </summary>
            <DrillFacts drill={each} />
            <div className="dialog-foot">
              <button type="button" onClick={() => onChange(each)}>
                {rich(
                  setsWords.parts('change', {
                    name: each.name,
                    span: (inside) => <span className="unseen">{inside}</span>,
                  }),
                )}
              </button>
              {own.has(each.id) && (
                <button type="button" className="danger" onClick={() => onRemove(each)}>
                  {rich(
                    setsWords.parts('remove', {
                      name: each.name,
                      span: (inside) => <span className="unseen">{inside}</span>,
                    }),
                  )}
                </button>
              )}
            </div>
          </details>
        </li>
      ))}
    </ul>
  );
}

interface PatternListProps {
  readonly patterns: readonly UsualPattern[];
  readonly onChange: (pattern: UsualPattern) => void;
  readonly onRemove: (pattern: UsualPattern) => void;
}

function PatternList({ patterns, onChange, onRemove }: PatternListProps) {
  return (
    <ul className="pattern-list">
      {patterns.map((each) => (
        <li key={each.id}>
          <span>
            {rich(
              setsWords.parts('text', {
                label: each.label,
                patternPhrase: patternPhrase(each.pattern.runs),
                perMetres: each.pattern.perMetres
                  ? ` ${setsWords('m', { perMetres: each.pattern.perMetres })}`
                  : ` ${setsWords('wall')}`,
                source: each.source,
                b: (inside) => <strong>{inside}</strong>,
                small: (inside) => <small>{inside}</small>,
              }),
            )}
          </span>
          <button type="button" onClick={() => onChange(each)}>
            {rich(
              setsWords.parts('changeLabel', {
                label: each.label,
                span: (inside) => <span className="unseen">{inside}</span>,
              }),
            )}
          </button>
          <button type="button" className="quiet" onClick={() => onRemove(each)}>
            {rich(
              setsWords.parts('removeLabel', {
                label: each.label,
                span: (inside) => <span className="unseen">{inside}</span>,
              }),
            )}
          </button>
        </li>
      ))}
    </ul>
  );
}
