import type { Ladder, PracticeItem } from '#core/practice/practice-schema';
import { unfoldItem } from '#core/practice/unfold-item';
import { patternPhrase } from '#core/practice/stroke-pattern';
import { usualLadders } from '#core/practice/usual-ladder';
import { KeptField } from '../ui/kept-field';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly item: PracticeItem;
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

const kinds = {
  lengths: setsWords('lengths'),
  pattern: setsWords('pattern'),
  count: setsWords('count'),
} as const;

/** A ladder, its rungs to change, and the repeats it unfolds into. */
export function LadderForm({ item, onChange }: Props) {
  const { ladder } = item;
  const choose = (id: string): void => {
    const usual = usualLadders.find((each) => each.id === id);
    if (!usual) {
      onChange({ ladder: null }, setsWords('dropLadder'));
      return;
    }
    const said: Partial<PracticeItem> = { ladder: { ...usual.ladder, rungs: [...usual.ladder.rungs] } };
    // a ladder replaces plain repeats: once through it, to begin with
    onChange(ladder ? said : { ...said, repeats: 1 }, setsWords('chooseLadder'));
  };
  return (
    <fieldset className="wide ladder-form">
      <legend>{setsWords('ladder')}</legend>
      <label className="two">
        {setsWords('ladderKinds', { kinds: ladder ? kinds[ladder.of] : '' })}
        <select value={ladder ? 'own' : ''} onChange={(event) => choose(event.target.value)}>
          <option value="">{setsWords('noneEveryRepeat')}</option>
          {ladder && <option value="own">{rungsText(ladder)}</option>}
          {usualLadders.map(({ id, label, ladder: of }) => (
            <option
              key={id}
              value={id}
              disabled={
                (of.of === 'lengths' && item.underwater) || (of.of === 'count' && item.targetCount === null)
              }
            >
              {of.of === 'count' && item.targetCount === null
                ? setsWords('needsStrokesHold', { label })
                : `${label}`}
            </option>
          ))}
        </select>
      </label>
      {ladder && (
        <label className="two">
          {setsWords('rungs')}
          <KeptField
            autoComplete="off"
            value={ladder}
            textOf={rungsText}
            readOf={(text) => withRungs(ladder, text)}
            onKeep={(next) => onChange({ ladder: next }, setsWords('changeRungs'))}
          />
        </label>
      )}
      {(ladder || item.repeats > 1) && (
        <ol className="wide unfolded" aria-label={setsWords('repeatsOrder')}>
          {unfoldItem(item)
            .slice(0, 40)
            .map(({ repeat, distanceMetres, count, pattern }) => (
              <li key={repeat}>
                {count !== null
                  ? setsWords('strokesDistanceMetres', {
                      distanceMetres,
                      patternPhrase:
                        ladder?.of === 'pattern' && pattern ? ` · ${patternPhrase(pattern.runs)}` : '',
                      count,
                    })
                  : `${distanceMetres}${ladder?.of === 'pattern' && pattern ? ` · ${patternPhrase(pattern.runs)}` : ''}`}
              </li>
            ))}
        </ol>
      )}
    </fieldset>
  );
}

function rungsText({ of, rungs }: Ladder): string {
  return of === 'count' ? rungs.map((n) => (n < 0 ? `${n}` : `+${n}`)).join(', ') : rungs.join('-');
}

/** The ladder with rungs as written; undefined when that can't be read. Limits are the file's. */
function withRungs(ladder: Ladder, text: string): Ladder | undefined {
  const parts = ladder.of === 'count' ? text.split(',') : text.split(/[-–,]/);
  const rungs = parts.map((part) => Number(part.trim() === '' ? Number.NaN : part));
  const least = ladder.of === 'count' ? -20 : 1;
  const most = ladder.of === 'lengths' ? 40 : 50;
  const fit = rungs.length <= 20 && rungs.every((n) => Number.isInteger(n) && n >= least && n <= most);
  return fit ? { ...ladder, rungs } : undefined;
}
