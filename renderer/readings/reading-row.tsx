import { memo, useState } from 'react';
import { chosenInterval } from '#core/measures/chosen-interval';
import type { ComputedReading, Reading, ReadingDefinition, ReadingNote } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { goTo } from '../open-swim/stepping';
import { nextOf } from '../open-swim/selectors';
import { formatReading } from '#core/measures/format-reading';
import { doubtsInWords } from '#core/measures/doubtful';
import { noteWords } from '#core/measures/reason-words';
import { MissingRow } from './missing-row';
import { AboutButton } from './about-button';
import { PinBar } from './pin-bar';
import { ReadingDetails } from './reading-details';
import { sourceFrames } from './source-frames';
import { metWords, TargetDot } from './target-dot';
import { targetMark } from '#core/measures/target-mark';
import { readingsWords } from '#core/words/readings';
import { rich } from '../ui/rich';

interface Props {
  readonly reading: Reading;
  readonly definition: ReadingDefinition;
  readonly share: ComputedReading | null;
  readonly swimmer: Swimmer | null;
  /** On the short list: the number large, what it is only when asked. */
  readonly large?: boolean;
}

/** The brief without its reading aid after the semicolon; the details say it in full. */
const shortBrief = (brief: string): string => brief.split(';')[0] ?? brief;

/** Said elsewhere: at the head and foot of the panel, and beside the count of cycles. */
const saidElsewhere: ReadonlySet<ReadingNote> = new Set([
  'marking-error-assumed',
  'few-cycles',
  'slowdown-assumed',
  'not-reviewed',
]);

/** One reading of the panel: the number, what stands behind it, and the way to its frames. */
export const ReadingRow = memo(function ReadingRow({
  reading,
  definition,
  share,
  swimmer,
  large = false,
}: Props) {
  const session = useOpenSwim();
  const lit = useView((state) => state.litReading === reading.id);
  const question = useView((state) => state.intervals);
  const [open, setOpen] = useState(false);

  const light = (): void => {
    if (lit) {
      session.view.setState({ litReading: null });
      return;
    }
    session.view.setState({ litReading: reading.id });
    const frames = sourceFrames(reading, session.document.swim());
    const { frame } = session.view.getState();
    if (frames.length > 0 && !frames.includes(frame))
      goTo(session, nextOf(frames, frame, 1) ?? frames[0] ?? frame);
  };
  const walk = (way: -1 | 1): void => {
    const frames = sourceFrames(reading, session.document.swim());
    const { frame } = session.view.getState();
    const to = nextOf(frames, frame, way) ?? (way > 0 ? frames[0] : frames.at(-1));
    if (to !== undefined) goTo(session, to);
  };

  if (reading.status === 'missing')
    return <MissingRow definition={definition} reading={reading} short={large} />;

  const interval = chosenInterval(reading, question);
  const text = formatReading({ ...reading, interval }, definition.digits);
  const target = targetMark(swimmer, reading.id, reading.value, interval);
  const shareText = share ? formatReading({ ...share, interval: chosenInterval(share, question) }, 1) : null;
  const frames = reading.from.postureFrames.length;
  const counted =
    reading.cycles > 0
      ? reading.notes.includes('few-cycles')
        ? readingsWords('cyclesFew', { cycles: reading.cycles })
        : readingsWords('cyclesCycles', { cycles: reading.cycles })
      : readingsWords('frames', { frames });
  const notes = reading.notes.filter((note) => !saidElsewhere.has(note));
  return (
    <li
      className={`reading${lit ? ' lit' : ''}${large ? ' large' : ''}`}
      data-reading={reading.id}
      data-value={reading.value}
    >
      <div className="reading-head">
        <button
          type="button"
          className="reading-main"
          aria-pressed={lit}
          onClick={light}
          title={readingsWords('showMarksFrames')}
        >
          <span className="reading-label">{definition.label}</span>
          <span className="reading-value">
            <strong>{text.value}</strong> <span className="spread">{text.spread}</span>{' '}
            <small title={/L/.test(text.unit) ? readingsWords('lOneBodyLength') : undefined}>
              {text.unit}
            </small>
          </span>
          <small className={shareText && !large ? 'reading-brief' : 'reading-brief wide'}>
            {large
              ? [counted, shareText && `${shareText.value} ${shareText.spread} ${shareText.unit}`]
                  .filter(Boolean)
                  .join(' · ')
              : `${shortBrief(definition.brief)} · ${counted}`}
            {interval.question !== question && ` ${readingsWords('swim2')}`}
          </small>
          {shareText && !large && (
            <small className="reading-share">
              {shareText.value} {shareText.spread} {shareText.unit}
            </small>
          )}
          {target && (
            <small className={`reading-met ${target.met}`}>
              {rich(
                readingsWords.parts('targetBand', {
                  band: target.band,
                  met: metWords[target.met],
                  b: (inside) => <strong>{inside}</strong>,
                }),
              )}
            </small>
          )}
          <TargetDot mark={target} />
        </button>
        <AboutButton label={definition.label} open={open} onOpen={setOpen} />
      </div>
      {text.doubtful && (
        <p className="reading-notes reading-doubts">
          {text.doubt === 'doubtful' && <strong>{readingsWords('doubtful2')} </strong>}
          {doubtsInWords(reading).join(' · ')}
        </p>
      )}
      {notes.length > 0 && <p className="reading-notes">{notes.map(noteWords).join(' · ')}</p>}
      {lit && (
        <div className="reading-walk">
          <button type="button" onClick={() => walk(-1)} title={readingsWords('frameBeforeComes')}>
            {readingsWords('itsFrame')}
          </button>
          <button type="button" onClick={() => walk(1)} title={readingsWords('nextFrameComes')}>
            {readingsWords('itsFrame2')}
          </button>
        </div>
      )}
      {open && <ReadingDetails definition={definition} reading={reading} unit={text.unit} />}
      {(lit || open) && <PinBar id={reading.id} label={definition.label} />}
    </li>
  );
});
