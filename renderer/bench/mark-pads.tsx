import { type EventKind, eventKinds, type Staff, staffOf } from '#core/marks/event-kind';
import { Glyph } from '../score/glyph';
import { eventWords } from '#core/marks/mark-words';
import { bodyLines, eventCounts } from '../open-swim/selectors';
import { copyLastForward, endBodyLine, startBodyLine } from '../stage/tools/body-line-tool';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { endPass, startPass } from '../open-swim/guided-pass';
import { markHere } from '../open-swim/marking';
import { padKeys, padWords } from './pad-keys';
import { FollowPad } from '../follow/follow-pad';
import { LookPads } from './look-pads';
import { PadSection } from './pad-section';
import { ScenePads } from './scene-pads';
import { useKeyOf, useTip } from '../ui/use-tip';
import { benchWords } from '#core/words/bench';

const staffs: readonly { readonly staff: Staff; readonly words: string }[] = [
  { staff: 'hands', words: benchWords('hands') },
  { staff: 'feet', words: benchWords('feet') },
  { staff: 'head', words: benchWords('head') },
  { staff: 'course', words: benchWords('course') },
];

function MarkPad({ kind }: { readonly kind: EventKind }) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const count = useSwim((swim) => eventCounts(swim)[kind]);
  const pointedOut = useView((state) => state.guidedKind === kind);
  const key = padKeys[kind];
  return (
    <button
      type="button"
      className={`pad${pointedOut ? ' pointed-out' : ''}`}
      onClick={() => void markHere(session, kind)}
      data-pad={kind}
      title={tip(`mark-${kind}`, benchWords('markFrame', { event: eventWords[kind].toLowerCase() }))}
      aria-label={benchWords('markedKey', { event: eventWords[kind], count, key: key.toUpperCase() })}
    >
      <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
        <Glyph kind={kind} />
      </svg>
      <span className="pad-words">{padWords[kind]}</span>
      <span className="pad-count">{count > 0 ? count : ''}</span>
      <kbd>{keyOf(`mark-${kind}`)}</kbd>
    </button>
  );
}

/** Everything that can be marked on the frame shown, each with its key and how often it has been. */
export function MarkPads() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const counts = useSwim(eventCounts);
  const pointedOut = useView((state) => state.guidedKind);
  const laid = useSwim((swim) => bodyLines(swim.postures).length);
  const passing = useView((state) => state.passStep !== null);
  const kicking = useSwim((swim) => swim.card.stroke === 'dolphin-kick');
  const laying = useView((state) => state.tool === 'body-line');
  return (
    <nav className="pads" aria-label={benchWords('marks')}>
      <button
        type="button"
        className="pad pass"
        aria-pressed={passing}
        onClick={() => (passing ? endPass(session) : startPass(session))}
        title={tip('guided-pass', benchWords('ledThroughOne'))}
      >
        <span className="pad-words">
          {kicking ? benchWords('markThreeKicks') : benchWords('markOneStroke2')}
        </span>
        <kbd>{keyOf('guided-pass')}</kbd>
      </button>
      {staffs.map(({ staff, words }) => {
        const kinds = eventKinds.filter((kind) => staffOf(kind) === staff);
        const marked = kinds.reduce((sum, kind) => sum + counts[kind], 0);
        const ofDrill = staff === 'feet' || (staff !== 'course' && !kicking);
        return (
          <PadSection
            key={staff}
            label={benchWords('markWords', { words: words.toLowerCase() })}
            words={words}
            open={ofDrill || marked > 0 || kinds.some((kind) => kind === pointedOut)}
            done={marked > 0 ? String(marked) : ''}
          >
            {kinds.map((kind) => (
              <MarkPad key={kind} kind={kind} />
            ))}
          </PadSection>
        );
      })}
      <PadSection
        label={benchWords('bodyLine')}
        words={benchWords('bodyLine')}
        open
        done={laid > 0 ? String(laid) : ''}
      >
        <button
          type="button"
          className="pad"
          aria-pressed={laying}
          onClick={() => (laying ? endBodyLine(session) : startBodyLine(session))}
          title={tip('body-line', benchWords('layBodyLineFrame'))}
        >
          <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
            <path d="M-9,-4 L-3,2 L2,-3 L9,4" fill="none" stroke="currentColor" strokeWidth="2" />
            <circle cx="-3" cy="2" r="2.4" fill="currentColor" />
            <circle cx="2" cy="-3" r="2.4" fill="currentColor" />
          </svg>
          <span className="pad-words">{benchWords('layLine')}</span>
          <span className="pad-count">{laid > 0 ? laid : ''}</span>
          <kbd>{keyOf('body-line')}</kbd>
        </button>
        <button
          type="button"
          className="pad"
          onClick={() => copyLastForward(session)}
          title={tip('copy-posture', benchWords('copyLastBodyLine'))}
        >
          <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
            <path
              d="M-8,5 L-2,-4 M1,5 L7,-4 M3,-6 L8,-6 L8,-1"
              fill="none"
              stroke="currentColor"
              strokeWidth="2"
            />
          </svg>
          <span className="pad-words">{benchWords('copyLast')}</span>
          <span className="pad-count" />
          <kbd>{keyOf('copy-posture')}</kbd>
        </button>
        <FollowPad />
      </PadSection>
      <ScenePads />
      <PadSection label={benchWords('picture')} words={benchWords('picture')} open done="">
        <LookPads />
      </PadSection>
    </nav>
  );
}
