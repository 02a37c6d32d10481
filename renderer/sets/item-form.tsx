import { armWords, sideWords } from '#core/swim-file/card-words';
import { efforts, armPositions, sidesUp } from '#core/swim-file/swim-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { drillById } from '#core/practice/drill-library';
import { itemCautions, planWarningWords } from '#core/practice/item-cautions';
import { type Practice, type PracticeItem, practiceStrokes } from '#core/practice/practice-schema';
import { KeptNumber, KeptText } from '../ui/kept-field';
import { Pick } from '../card/pick';
import { ConditionsForm } from '../card/conditions-form';
import { AidTicks } from './aid-ticks';
import { CautionsList } from './cautions-list';
import { KickBetweenForm } from './kick-between-form';
import { LadderForm } from './ladder-form';
import { withDrill } from './new-practice';
import { PatternForm } from './pattern-form';
import { PauseForm } from './pause-form';
import { practiceStrokeWords } from './sets-words';
import type { Drills } from './use-drills';
import { WhoSwims } from './who-swims';

interface Props {
  readonly item: PracticeItem;
  readonly practice: Practice;
  readonly squad: Squad;
  readonly drills: Drills;
  /** `name`: what the step is called when it is undone. */
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

type HowProps = Omit<Props, 'practice' | 'squad' | 'drills'>;

/** Everything that can be planned of one item. */
export function ItemForm({ item, practice, squad, drills, onChange }: Props) {
  const drill = drillById(item.drillId ?? '', drills.book.drills);
  const { cautions, warnings } = itemCautions(item, drill);
  const swimmers = squad.swimmers.filter(({ id }) => practice.swimmerIds.includes(id));
  return (
    <div className="item-form">
      <label>
        Repeats
        <KeptNumber
          least={1}
          most={200}
          whole
          value={item.repeats}
          onKeep={(repeats) => repeats !== null && onChange({ repeats }, 'change the repeats')}
        />
      </label>
      <label>
        Distance, m
        <KeptNumber
          least={1}
          most={10_000}
          value={item.distanceMetres}
          onKeep={(metres) => metres !== null && onChange({ distanceMetres: metres }, 'change the distance')}
        />
      </label>
      <label className="two">
        Drill
        <select
          value={item.drillId ?? ''}
          onChange={(event) => {
            const chosen = drillById(event.target.value, drills.book.drills);
            const { id: _, ...said } = withDrill(item, chosen);
            onChange(said, 'choose a drill');
          }}
        >
          <option value="">None: the plain stroke</option>
          {drills.all.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
          {item.drillId !== null && !drill && <option value={item.drillId}>A drill that is gone</option>}
        </select>
      </label>
      <label className="two">
        In your own words
        <KeptText
          maxLength={200}
          placeholder="empty: as chosen here"
          value={item.words}
          onKeep={(words) => onChange({ words }, 'name the item')}
        />
      </label>
      <HowSwum item={item} onChange={onChange} />
      <AidTicks legend="Aids" aids={item.aids} onChange={(aids) => onChange({ aids }, 'change the aids')} />
      <PauseForm item={item} onChange={onChange} />
      <label>
        Strokes to hold
        <KeptNumber
          least={1}
          most={500}
          whole
          mayBeEmpty
          placeholder="–"
          value={item.targetCount}
          onKeep={(targetCount) => onChange({ targetCount }, 'change the strokes to hold')}
        />
      </label>
      <label>
        A breath every
        <KeptNumber
          least={1}
          most={8}
          whole
          mayBeEmpty
          placeholder="free"
          aria-label="A breath every so many strokes"
          value={item.breathingEvery}
          onKeep={(breathingEvery) => onChange({ breathingEvery }, 'change the breathing')}
        />
      </label>
      <PatternForm
        item={item}
        practice={practice}
        swimmers={swimmers}
        book={drills.book}
        onChange={onChange}
      />
      <LadderForm item={item} onChange={onChange} />
      <KickBetweenForm
        kick={item.kickBetween}
        onChange={(kickBetween) => onChange({ kickBetween }, 'change the kick between')}
      />
      <label className="tick wide">
        <input
          type="checkbox"
          checked={item.underwater}
          onChange={(event) => onChange({ underwater: event.target.checked }, 'say whether under water')}
        />
        Goes under water, beyond a plain push-off
      </label>
      {swimmers.length > 1 && <WhoSwims item={item} swimmers={swimmers} onChange={onChange} />}
      <details className="wide">
        <summary>Position for a trial</summary>
        <ConditionsForm
          conditions={item.tags}
          onChange={(tags) => onChange({ tags }, 'change the position')}
        />
      </details>
      <label className="wide">
        Note
        <KeptText maxLength={2000} value={item.note} onKeep={(note) => onChange({ note }, 'write a note')} />
      </label>
      {warnings.map((warning) => (
        <p key={warning.code} className="message message-trouble wide">
          {planWarningWords(warning)}
        </p>
      ))}
      <div className="wide">
        <CautionsList codes={cautions} />
      </div>
    </div>
  );
}

/** Stroke, side, arms and effort. */
function HowSwum({ item, onChange }: HowProps) {
  return (
    <>
      <Pick
        label="Stroke"
        value={item.stroke}
        choices={practiceStrokes}
        words={(stroke) => practiceStrokeWords[stroke]}
        onPick={(stroke) => onChange({ stroke }, 'change the stroke')}
      />
      <Pick
        label="Side up"
        value={item.sideUp}
        choices={sidesUp}
        words={(side) => sideWords[side]}
        onPick={(sideUp) => onChange({ sideUp }, 'change the side')}
      />
      <Pick
        label="Arms"
        value={item.arms}
        choices={armPositions}
        words={(arms) => armWords[arms]}
        onPick={(arms) => onChange({ arms }, 'change the arms')}
      />
      <Pick
        label="Effort"
        value={item.effort ?? 'not-said'}
        choices={['not-said', ...efforts] as const}
        words={(effort) => (effort === 'not-said' ? 'not said' : effort)}
        onPick={(effort) => onChange({ effort: effort === 'not-said' ? null : effort }, 'change the effort')}
      />
    </>
  );
}
