import type { EventKind } from '#core/marks/event-kind';
import { Glyph } from '../../score/glyph';
import { Dimension } from './dimension';
import { readingsWords } from '#core/words/readings';

/** Where the moments of one drawn stroke lie; made up to be seen apart, not to be copied. */
const hands: Readonly<Record<string, number>> = { entry: 50, catch: 98, shoulder: 136, exit: 180 };
const kicks = { top1: 62, bottom1: 88, top2: 148, bottom2: 190 } as const;
const nextEntry = 238;
type Kick = keyof typeof kicks;

/** Which kick mark is held against which moment of the hands. */
const gaps: readonly { readonly id: RegExp; readonly hand: EventKind; readonly kick: Kick }[] = [
  { id: /^(kick1-top-to-entry|gap-t1)/, hand: 'entry', kick: 'top1' },
  { id: /^kick1-bottom-to-entry/, hand: 'entry', kick: 'bottom1' },
  { id: /^gap-t2/, hand: 'catch', kick: 'bottom1' },
  { id: /^gap-t3/, hand: 'shoulder', kick: 'top2' },
  { id: /^kick2-top-to-exit/, hand: 'exit', kick: 'top2' },
  { id: /^(kick2-bottom-to-exit|gap-t4)/, hand: 'exit', kick: 'bottom2' },
];
const allFour: readonly (readonly [EventKind, Kick])[] = [
  ['entry', 'top1'],
  ['catch', 'bottom1'],
  ['shoulder', 'top2'],
  ['exit', 'bottom2'],
];
const phases: Readonly<Record<string, readonly [number, number]>> = {
  'phase-entry-catch': [hands['entry'] ?? 0, hands['catch'] ?? 0],
  'phase-pull': [hands['catch'] ?? 0, hands['shoulder'] ?? 0],
  'phase-push': [hands['shoulder'] ?? 0, hands['exit'] ?? 0],
  'phase-recovery': [hands['exit'] ?? 0, nextEntry],
};

/** One stroke on two staves, with the time that the reading is. */
export function TimingDrawing({ id }: { readonly id: string }) {
  const gap = gaps.find((each) => each.id.test(id));
  const asked = gap ? [[gap.hand, gap.kick] as const] : id.startsWith('gap-total') ? allFour : [];
  const phase = phases[id];
  const feetY = (kick: Kick): number => (kick.startsWith('top') ? 66 : 82);
  return (
    <>
      <path className="drawn-line" d="M36,24H250M36,74H250" />
      <path className="drawn-line" d={`M${hands['entry']},12V92M${nextEntry},12V92`} strokeDasharray="2 3" />
      {[...Object.entries(hands), ['entry', nextEntry] as const].map(([kind, x]) => (
        <g key={x} transform={`translate(${x},24)`}>
          <Glyph kind={kind as EventKind} scale={0.8} />
        </g>
      ))}
      {(Object.entries(kicks) as [Kick, number][]).map(([kick, x]) => (
        <g key={kick} transform={`translate(${x},${feetY(kick)})`}>
          <Glyph kind={kick.startsWith('top') ? 'kick-top' : 'kick-bottom'} scale={0.8} />
        </g>
      ))}
      {asked.map(([hand, kick]) => (
        <Dimension key={kick} from={[hands[hand] ?? 0, 48]} to={[kicks[kick], 48]} />
      ))}
      {asked.map(([hand, kick]) => (
        <path
          key={`l${kick}`}
          className="drawn-help"
          d={`M${hands[hand]},32V48M${kicks[kick]},48V${feetY(kick) - 8}`}
        />
      ))}
      {phase && (
        <Dimension
          from={[phase[0], 48]}
          to={[phase[1], 48]}
          words={readingsWords('stroke')}
          shift={[-38, -6]}
        />
      )}
      <text x={4} y={28} className="drawn-name">
        {readingsWords('hands')}
      </text>
      <text x={4} y={78} className="drawn-name">
        {readingsWords('feet')}
      </text>
    </>
  );
}
