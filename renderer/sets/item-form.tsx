import { efforts } from '#core/swim-file/swim-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { drillById } from '#core/practice/drill-library';
import { itemCautions, planWarningWords } from '#core/practice/item-cautions';
import { type Practice, type PracticeItem, practiceStrokes } from '#core/practice/practice-schema';
import { KeptNumber } from '../ui/kept-field';
import { Pick } from '../card/pick';
import { AidTicks } from './aid-ticks';
import { CautionsList } from './cautions-list';
import { withDrill } from './new-practice';
import { MoreOfItem } from './more-of-item';
import { PauseForm } from './pause-form';
import { practiceStrokeWords } from './sets-words';
import type { Drills } from './use-drills';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly item: PracticeItem;
  readonly practice: Practice;
  readonly squad: Squad;
  readonly drills: Drills;
  /** `name`: what the step is called when it is undone. */
  readonly onChange: (said: Partial<PracticeItem>, name: string) => void;
}

type HowProps = Omit<Props, 'practice' | 'squad' | 'drills'>;

/** What is usually planned of an item, and behind one word everything else. */
export function ItemForm({ item, practice, squad, drills, onChange }: Props) {
  const drill = drillById(item.drillId ?? '', drills.book.drills);
  const { cautions, warnings } = itemCautions(item, drill);
  const swimmers = squad.swimmers.filter(({ id }) => practice.swimmerIds.includes(id));
  return (
    <div className="item-form">
      <label>
        {setsWords('repeats')}
        <KeptNumber
          least={1}
          most={200}
          whole
          value={item.repeats}
          onKeep={(repeats) => repeats !== null && onChange({ repeats }, setsWords('changeRepeats'))}
        />
      </label>
      <label>
        {setsWords('distanceM')}
        <KeptNumber
          least={1}
          most={10_000}
          value={item.distanceMetres}
          onKeep={(metres) =>
            metres !== null && onChange({ distanceMetres: metres }, setsWords('changeDistance'))
          }
        />
      </label>
      <label className="two">
        {setsWords('drill')}
        <select
          value={item.drillId ?? ''}
          onChange={(event) => {
            const chosen = drillById(event.target.value, drills.book.drills);
            const { id: _, ...said } = withDrill(item, chosen);
            onChange(said, setsWords('chooseDrill'));
          }}
        >
          <option value="">{setsWords('nonePlainStroke')}</option>
          {drills.all.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
          {item.drillId !== null && !drill && <option value={item.drillId}>{setsWords('drillGone')}</option>}
        </select>
      </label>
      <HowSwum item={item} onChange={onChange} />
      <PauseForm item={item} onChange={onChange} />
      <AidTicks
        legend={setsWords('aids')}
        aids={item.aids}
        onChange={(aids) => onChange({ aids }, setsWords('changeAids'))}
      />
      <label>
        {setsWords('strokesHold')}
        <KeptNumber
          least={1}
          most={500}
          whole
          mayBeEmpty
          placeholder="–"
          value={item.targetCount}
          onKeep={(targetCount) => onChange({ targetCount }, setsWords('changeStrokesHold'))}
        />
      </label>
      <label className="tick three">
        <input
          type="checkbox"
          checked={item.underwater}
          onChange={(event) => onChange({ underwater: event.target.checked }, setsWords('sayWhetherUnder'))}
        />
        {setsWords('goesUnderWater')}
      </label>
      <MoreOfItem
        item={item}
        drill={drill}
        practice={practice}
        swimmers={swimmers}
        book={drills.book}
        onChange={onChange}
      />
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

/** Stroke and effort. */
function HowSwum({ item, onChange }: HowProps) {
  return (
    <>
      <Pick
        label={setsWords('stroke')}
        value={item.stroke}
        choices={practiceStrokes}
        words={(stroke) => practiceStrokeWords[stroke]}
        onPick={(stroke) => onChange({ stroke }, setsWords('changeStroke'))}
      />
      <Pick
        label={setsWords('effort2')}
        value={item.effort ?? 'not-said'}
        choices={['not-said', ...efforts] as const}
        words={(effort) => (effort === 'not-said' ? setsWords('notSaid') : effort)}
        onPick={(effort) =>
          onChange({ effort: effort === 'not-said' ? null : effort }, setsWords('changeEffort'))
        }
      />
    </>
  );
}
