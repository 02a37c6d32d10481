import type { Drills } from './use-drills';
import { armPositions, sidesUp } from '#core/swim-file/swim-schema';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { armWords, sideWords } from '#core/swim-file/card-words';
import type { Drill } from '#core/practice/drill-schema';
import { plainItem } from '#core/practice/plain-item';
import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import { setsWords } from '#core/words/sets';
import { ConditionsForm } from '../card/conditions-form';
import { Pick } from '../card/pick';
import { KeptNumber, KeptText } from '../ui/kept-field';
import { KickBetweenForm } from './kick-between-form';
import { LadderForm } from './ladder-form';
import { withDrill } from './new-practice';
import { PatternForm } from './pattern-form';
import { WhoSwims } from './who-swims';

interface Props {
  readonly item: PracticeItem;
  readonly drill: Drill | null;
  readonly practice: Practice;
  /** Those of the practice. */
  readonly swimmers: readonly Swimmer[];
  readonly book: Drills['book'];
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

const names = {
  words: setsWords('yourOwnWords'),
  sideUp: setsWords('sideUp'),
  arms: setsWords('arms'),
  breathingEvery: setsWords('breathEvery'),
  pattern: setsWords('strokePattern'),
  ladder: setsWords('ladder'),
  kickBetween: setsWords('kickBetween'),
  swimmerIds: setsWords('whoSwims2'),
  tags: setsWords('positionTrial'),
  note: setsWords('note3'),
} as const;

/** What is said of an item behind the word, in words: nothing that is set hides. */
function saidOf(item: PracticeItem, drill: Drill | null): readonly string[] {
  // what the drill itself brings is told by its name
  const plain = withDrill(plainItem(item.id, item.distanceMetres), drill);
  const keys = Object.keys(names) as (keyof typeof names)[];
  return keys
    .filter((key) => JSON.stringify(item[key]) !== JSON.stringify(plain[key]))
    .map((key) => names[key]);
}

/** What is planned of few items, behind one word that tells what of it is set. */
export function MoreOfItem({ item, drill, practice, swimmers, book, onChange }: Props) {
  const said = saidOf(item, drill);
  return (
    <details className="wide more-of-item">
      <summary>
        {said.length === 0 ? setsWords('more') : setsWords('moreSet', { said: said.join(', ') })}
      </summary>
      <div className="more-fields">
        <label className="two">
          {setsWords('yourOwnWords')}
          <KeptText
            maxLength={200}
            placeholder={setsWords('emptyChosenHere')}
            value={item.words}
            onKeep={(words) => onChange({ words }, setsWords('nameItem'))}
          />
        </label>
        <Pick
          label={setsWords('sideUp')}
          value={item.sideUp}
          choices={sidesUp}
          words={(side) => sideWords[side]}
          onPick={(sideUp) => onChange({ sideUp }, setsWords('changeSide'))}
        />
        <Pick
          label={setsWords('arms')}
          value={item.arms}
          choices={armPositions}
          words={(arms) => armWords[arms]}
          onPick={(arms) => onChange({ arms }, setsWords('changeArms'))}
        />
        <label>
          {setsWords('breathEvery')}
          <KeptNumber
            least={1}
            most={8}
            whole
            mayBeEmpty
            placeholder={setsWords('free')}
            aria-label={setsWords('breathEverySo')}
            value={item.breathingEvery}
            onKeep={(breathingEvery) => onChange({ breathingEvery }, setsWords('changeBreathing'))}
          />
        </label>
        <PatternForm item={item} practice={practice} swimmers={swimmers} book={book} onChange={onChange} />
        <LadderForm item={item} onChange={onChange} />
        <KickBetweenForm
          kick={item.kickBetween}
          onChange={(kickBetween) => onChange({ kickBetween }, setsWords('changeKickBetween'))}
        />
        {swimmers.length > 1 && <WhoSwims item={item} swimmers={swimmers} onChange={onChange} />}
        <div className="wide">
          <ConditionsForm
            conditions={item.tags}
            onChange={(tags) => onChange({ tags }, setsWords('changePosition'))}
          />
        </div>
        <label className="wide">
          {setsWords('note3')}
          <KeptText
            maxLength={2000}
            value={item.note}
            onKeep={(note) => onChange({ note }, setsWords('writeNote'))}
          />
        </label>
      </div>
    </details>
  );
}
