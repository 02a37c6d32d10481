import { scaleLinear } from 'd3-scale';
import { useMemo, useRef } from 'react';
import { eventWords } from '#core/marks/mark-words';
import type { OverlaidCycles, OverlaidMoment } from '#core/measures/events/overlaid-cycles';
import { useOpenSwim } from '../open-swim/open-swim';
import { goTo } from '../open-swim/stepping';
import { useElementSize } from '../ui/use-element-size';
import { Glyph } from './glyph';
import { useDoubtfulReadings } from './use-doubtful-readings';
import { glyphHeight, layoutScore, type ScoreLayout } from './score-layout';
import { ScoreStaves } from './score-staves';
import { scoreWords } from '#core/words/score';

/** Percent shown before the stroke begins and after it ends: a kick may lead the hands. Our default. */
const before = -14;
const after = 106;

/** Our estimate of a letter's width in the words of the gaps, pixels. */
const letter = 7.6;

/** How far the mean's bar lies below its glyphs, pixels. */
const meanBelow = 13;

const signed = (value: number, digits: number): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(digits)}`;

const nameOf = ({ kind, kick }: Pick<OverlaidMoment, 'kind' | 'kick'>): string =>
  `${eventWords[kind].toLowerCase()}${kick === null ? '' : ` ${scoreWords('kick', { kick })}`}`;

const spreadWords = (sd: number | null, digits: number): string =>
  sd === null ? '' : ` ± ${sd.toFixed(digits)}`;

/** All strokes on one: every mark faint, its mean bold with ± SD, and the four gaps between the means. */
export function ScoreOverlaid({ overlaid }: { readonly overlaid: OverlaidCycles }) {
  const session = useOpenSwim();
  const box = useRef<HTMLDivElement>(null);
  const size = useElementSize(box);
  const layout = useMemo(() => layoutScore(size.height), [size.height]);
  const x = useMemo(
    () => scaleLinear([before, after], [layout.gutter + 14, Math.max(layout.gutter + 60, size.width - 18)]),
    [layout.gutter, size.width],
  );
  const { moments, cycles, of } = overlaid;
  const bottom = layout.staffs.course.top + layout.staffs.course.height;
  const choose = (id: string, frame: number): void => {
    session.view.setState({ selection: { kind: 'event', id } });
    goTo(session, frame);
  };
  return (
    <section className="score" aria-label={scoreWords('scoreStrokesOver')}>
      <div className="score-box" ref={box}>
        {/* biome-ignore lint/a11y/useSemanticElements: an SVG drawing of buttons can hold no fieldset */}
        <svg
          width={size.width}
          height={size.height}
          viewBox={`0 0 ${Math.max(1, size.width)} ${Math.max(1, size.height)}`}
          role="group"
          aria-label={scoreWords('sOverOneAnother', {
            cycles,
            of,
            moments: moments
              .map((each) => `${nameOf(each)} ${each.mean.toFixed(0)}${spreadWords(each.sd, 0)}`)
              .join(', '),
          })}
        >
          <ScoreStaves layout={layout} width={size.width} />
          <line x1={x(0)} x2={x(0)} y1={4} y2={bottom} className="bar-line" />
          <line x1={x(100)} x2={x(100)} y1={4} y2={bottom} className="bar-line" />
          <text x={x(0) + 6} y={14} className="bar-name">
            {scoreWords('sOverOneAnotherMean', { cycles, of })}
          </text>
          <Phases overlaid={overlaid} layout={layout} x={x} />
          <Gaps overlaid={overlaid} layout={layout} x={x} />
          {moments.flatMap((moment) =>
            moment.marks.map((mark) => (
              // biome-ignore lint/a11y/useSemanticElements: an SVG drawing can hold no button element
              <g
                key={mark.eventId + String(mark.cycle)}
                role="button"
                tabIndex={0}
                className="overlaid-mark"
                aria-label={`${nameOf(moment)}, ${of} ${mark.cycle}${mark.breathing ? ', breathing' : ''}, ${mark.percent.toFixed(1)} %`}
                transform={`translate(${x(mark.percent)},${glyphHeight(layout, moment.kind)})`}
                onClick={() => choose(mark.eventId, mark.frame)}
                onKeyDown={(event) => {
                  if (event.key !== 'Enter') return;
                  event.preventDefault();
                  event.stopPropagation();
                  choose(mark.eventId, mark.frame);
                }}
              >
                <rect x={-12} y={-13} width={24} height={26} fill="transparent" />
                <Glyph kind={moment.kind} />
                <title>
                  {mark.breathing
                    ? scoreWords('breathing', {
                        nameOf: nameOf(moment),
                        of,
                        cycle: mark.cycle,
                        percent: mark.percent.toFixed(1),
                      })
                    : `${nameOf(moment)}, ${of} ${mark.cycle}: ${mark.percent.toFixed(1)} %`}
                </title>
              </g>
            )),
          )}
          {moments.map((moment) => (
            <Mean key={`${moment.kind}${moment.kick ?? ''}`} moment={moment} layout={layout} x={x} />
          ))}
          {[0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100].map((percent) => (
            <g key={percent}>
              <line
                x1={x(percent)}
                x2={x(percent)}
                y1={layout.axisTop}
                y2={layout.axisTop + 6}
                className="tick"
              />
              <text x={x(percent)} y={layout.axisTop + 20} className="tick-words">
                {percent} %
              </text>
            </g>
          ))}
        </svg>
        {moments.length === 0 && (
          <p className="score-empty">
            {of === 'stroke' && cycles === 0 ? scoreWords('noStrokeSort') : scoreWords('markTwoHandEntries')}
          </p>
        )}
      </div>
    </section>
  );
}

interface Part {
  readonly overlaid: OverlaidCycles;
  readonly layout: ScoreLayout;
  readonly x: (percent: number) => number;
}

function Mean({ moment, layout, x }: { readonly moment: OverlaidMoment } & Omit<Part, 'overlaid'>) {
  // under the glyphs it sums up, clear of them
  const y = glyphHeight(layout, moment.kind) + meanBelow;
  const sd = moment.sd ?? 0;
  // the start of the stroke is where it is by agreement: it has no spread to show
  if (moment.kind === 'entry') return null;
  return (
    <g className="overlaid-mean">
      <path
        d={`M${x(moment.mean - sd)},${y}H${x(moment.mean + sd)}M${x(moment.mean - sd)},${y - 5}v10M${x(moment.mean + sd)},${y - 5}v10`}
      />
      {/* over a kick's top stand the words of the gaps: its own go below its bar */}
      <text x={x(moment.mean)} y={moment.kind === 'kick-top' ? y + 16 : y - meanBelow - 12}>
        {moment.mean.toFixed(0)}
        {spreadWords(moment.sd, 1)}
      </text>
    </g>
  );
}

const boundaries = ['entry', 'catch', 'shoulder', 'exit'] as const;
const phaseNames = [scoreWords('entryCatch'), 'pull', 'push', 'recovery'] as const;

function Phases({ overlaid, layout, x }: Part) {
  const at = (kind: (typeof boundaries)[number]): number | null =>
    overlaid.moments.find((each) => each.kind === kind)?.mean ?? null;
  const ends = [...boundaries.map(at), 100];
  if (ends.some((end) => end === null)) return null;
  const { top, height } = layout.phases;
  return (
    <g>
      {phaseNames.map((name, i) => {
        const [from, to] = [x(ends[i] ?? 0), x(ends[i + 1] ?? 0)];
        const words = `${name} ${((ends[i + 1] ?? 0) - (ends[i] ?? 0)).toFixed(0)} %`;
        return (
          <g key={name}>
            <rect
              x={from}
              y={top}
              width={Math.max(0, to - from)}
              height={height}
              className={`phase phase-${i}`}
            >
              <title>{words}</title>
            </rect>
            {to - from > words.length * 6 + 6 && (
              <text x={(from + to) / 2} y={top + height / 2} className="phase-name">
                {words}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

function Gaps({ overlaid, layout, x }: Part) {
  const { moments, gaps } = overlaid;
  const { ties } = layout;
  const isDoubtful = useDoubtfulReadings();
  const drawn = gaps.flatMap((gap) => {
    const hand = moments.find(({ kind }) => kind === gap.hand);
    const leg = moments.find(({ kind, kick }) => kind === gap.leg && kick === gap.kick);
    return hand && leg ? [{ gap, hand, leg, x1: x(hand.mean), x2: x(leg.mean) }] : [];
  });
  return (
    <g className="score-connectors">
      {drawn.map(({ gap, hand, leg, x1, x2 }, index) => {
        const y1 = glyphHeight(layout, hand.kind) + 9;
        const y2 = glyphHeight(layout, leg.kind) - 6;
        const path = `M${x1},${y1} C${x1},${(y1 + y2) / 2} ${x2},${(y1 + y2) / 2} ${x2},${y2}`;
        const ask = isDoubtful(gap.id) ? ' ?' : '';
        const ms = `${scoreWords('msSigned', {
          signed: signed(gap.milliseconds.mean, 0),
          spread: spreadWords(gap.milliseconds.sd, 0),
        })}${ask}`;
        const percent = `${signed(gap.percent.mean, 1)}${spreadWords(gap.percent.sd, 1)} %${ask}`;
        // words begin where the tie crosses their row, and give up their ± before they run into the next tie
        const at = (tie: { readonly x1: number; readonly x2: number }): number => (tie.x1 + tie.x2) / 2;
        const left = Math.max(x1, at({ x1, x2 })) + 6;
        const next = drawn[index + 1];
        const room = (next ? Math.min(next.x1, at(next)) : x(after)) - left - 4;
        const short = {
          ms: `${scoreWords('ms', { signed: signed(gap.milliseconds.mean, 0) })}${ask}`,
          percent: `${signed(gap.percent.mean, 1)} %${ask}`,
        };
        const shown = [{ ms, percent }, short].find((each) => each.ms.length * letter <= room);
        return (
          <g key={gap.id} className="connector">
            <path d={path} className="connector-edge" />
            <path d={path} className="connector-line" />
            {shown && (
              <text x={left} y={ties.top + 12} className="connector-words">
                {shown.ms}
                {ties.height >= 28 && (
                  <tspan x={left} dy="1.15em" className="connector-percent">
                    {shown.percent}
                  </tspan>
                )}
              </text>
            )}
            <title>
              {ask === ''
                ? scoreWords('legStrokeFrom', { gap: gap.id.slice(4).toUpperCase(), ms, percent })
                : scoreWords('doubtful', {
                    said: scoreWords('legStrokeFrom', { gap: gap.id.slice(4).toUpperCase(), ms, percent }),
                  })}
            </title>
          </g>
        );
      })}
    </g>
  );
}
