import { choosableReadings } from '#core/practice/choosable-readings';
import { armWords, sideWords } from '#core/swim-file/card-words';
import { useState } from 'react';
import { type CautionCode, cautionCodes, cautions, underwaterCautions } from '#core/practice/caution';
import type { Drill } from '#core/practice/drill-schema';
import { practiceStrokes } from '#core/practice/practice-schema';
import { parsePattern, patternFaultWords, patternPhrase } from '#core/practice/stroke-pattern';
import { armPositions, sidesUp } from '#core/swim-file/swim-schema';
import { Dialog } from '../ui/dialog';
import { Pick } from '../card/pick';
import { AidTicks } from './aid-ticks';
import { practiceStrokeWords } from './sets-words';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly drill: Drill;
  readonly onKeep: (drill: Drill) => Promise<void>;
  readonly onCancel: () => void;
}

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map((each) => each.trim())
    .filter(Boolean)
    .slice(0, 10);

/** Writes a drill of the coach's own, or rewrites one of the library in the coach's words. */
export function DrillDialog({ drill, onKeep, onCancel }: Props) {
  const [said, setSaid] = useState(drill);
  const [watch, setWatch] = useState(drill.watch.join('\n'));
  const [pattern, setPattern] = useState(drill.pattern ? patternPhrase(drill.pattern.runs) : '');
  const [busy, setBusy] = useState(false);
  const read = pattern.trim() === '' ? null : parsePattern(pattern);
  const set = (change: Partial<Drill>): void => setSaid({ ...said, ...change });
  const keep = async (): Promise<void> => {
    if (read?.ok === false) return;
    setBusy(true);
    await onKeep({
      ...said,
      name: said.name.trim(),
      purpose: said.purpose.trim(),
      source: said.source.trim() || 'my own',
      watch: lines(watch),
      pattern: read?.ok ? { runs: read.runs, perMetres: said.pattern?.perMetres ?? 25 } : null,
    });
    setBusy(false);
  };
  return (
    <Dialog title={drill.name || setsWords('drillYourOwn')} wide onCancel={onCancel}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        <div className="card-form">
          <label className="two">
            {setsWords('name')}
            <input
              required
              data-first-focus
              pattern=".*\S.*"
              maxLength={120}
              value={said.name}
              onChange={(event) => set({ name: event.target.value })}
            />
          </label>
          <Pick
            label={setsWords('stroke')}
            value={said.stroke}
            choices={practiceStrokes}
            words={(stroke) => practiceStrokeWords[stroke]}
            onPick={(stroke) => set({ stroke })}
          />
          <Pick
            label={setsWords('sideUp')}
            value={said.sideUp}
            choices={sidesUp}
            words={(side) => sideWords[side]}
            onPick={(sideUp) => set({ sideUp })}
          />
          <Pick
            label={setsWords('arms')}
            value={said.arms}
            choices={armPositions}
            words={(arms) => armWords[arms]}
            onPick={(arms) => set({ arms })}
          />
          <label>
            {setsWords('strokePattern')}
            <input
              value={pattern}
              maxLength={200}
              placeholder={setsWords('n2Right2Left')}
              aria-invalid={read?.ok === false || undefined}
              onChange={(event) => setPattern(event.target.value)}
            />
            {read?.ok === false && <small role="alert">{patternFaultWords(read.fault)}</small>}
          </label>
          <AidTicks legend={setsWords('aids')} aids={said.aids} onChange={(aids) => set({ aids })} />
          <label className="wide">
            {setsWords('what')}
            <textarea
              required
              rows={2}
              maxLength={1000}
              value={said.purpose}
              onChange={(event) => set({ purpose: event.target.value })}
            />
          </label>
          <label className="wide">
            {setsWords('how')}
            <textarea
              rows={2}
              maxLength={2000}
              value={said.how}
              onChange={(event) => set({ how: event.target.value })}
            />
          </label>
          <label className="wide">
            {setsWords('whatWatchLine')}
            <textarea
              rows={3}
              maxLength={3000}
              value={watch}
              onChange={(event) => setWatch(event.target.value)}
            />
          </label>
          <label className="wide">
            {setsWords('readingsApply')}
            <select
              multiple
              size={5}
              value={said.readings}
              onChange={(event) =>
                set({ readings: [...event.target.selectedOptions].map(({ value }) => value).slice(0, 20) })
              }
            >
              {choosableReadings.map(({ id, label }) => (
                <option key={id} value={id}>
                  {label}
                </option>
              ))}
            </select>
          </label>
          <DrillCautions said={said} set={set} />
          <label className="wide">
            {setsWords('whereFrom')}
            <input
              maxLength={200}
              value={said.source}
              onChange={(event) => set({ source: event.target.value })}
            />
          </label>
        </div>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={busy || read?.ok === false}>
            {setsWords('keep')}
          </button>
          <button type="button" onClick={onCancel}>
            {setsWords('leave2')}
          </button>
        </footer>
      </form>
    </Dialog>
  );
}

interface CautionsProps {
  readonly said: Drill;
  readonly set: (change: Partial<Drill>) => void;
}

/** What to warn of; a drill under water has some that can't be taken off. */
function DrillCautions({ said, set }: CautionsProps) {
  const toggleCaution = (code: CautionCode, on: boolean): void =>
    set({ cautions: on ? [...said.cautions, code] : said.cautions.filter((each) => each !== code) });
  return (
    <fieldset className="wide">
      <legend>{setsWords('cautions')}</legend>
      <label>
        <input
          type="checkbox"
          checked={said.underwater}
          onChange={(event) =>
            set(
              event.target.checked
                ? {
                    underwater: true,
                    cautions: [...new Set([...said.cautions, ...underwaterCautions])],
                  }
                : { underwater: false },
            )
          }
        />
        {setsWords('goesUnderWater')}
      </label>
      {cautionCodes.map((code) => {
        const bound = said.underwater && underwaterCautions.includes(code);
        return (
          <label key={code}>
            <input
              type="checkbox"
              checked={bound || said.cautions.includes(code)}
              disabled={bound}
              onChange={(event) => toggleCaution(code, event.target.checked)}
            />
            {cautions[code].words}
          </label>
        );
      })}
    </fieldset>
  );
}
