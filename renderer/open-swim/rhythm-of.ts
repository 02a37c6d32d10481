import { cycleStarts } from '#core/measures/events/cycle-starts';
import type { TimedEvent } from '#core/measures/timed-event';
import { type Stroke, strokesOf } from '#core/measures/events/strokes';
import type { ScoreGap, ScorePhase, ScoreRhythm, ScoreStroke } from './score-rhythm';
import { openSwimWords } from '#core/words/open-swim';

/**
 * Readings whose cycles are drawn as ties, one for each of the four gaps: kick one with the hand entry (T1) and with the
 * catch (T2), kick two with the shoulders (T3) and with the hand exit (T4).
 */
export const tiedReadings = {
  entry: 'kick1-top-to-entry',
  catch: 'gap-t2',
  shoulder: 'gap-t3',
  exit: 'kick2-bottom-to-exit',
} as const;

function phasesOf(stroke: Stroke): readonly ScorePhase[] {
  const { entry, catch: caught, shoulder, exit, next } = stroke;
  if (!caught || !shoulder || !exit) return [];
  const length = next.time - entry.time;
  const phase = (name: string, from: TimedEvent, to: TimedEvent): ScorePhase => ({
    name,
    from: from.time,
    to: to.time,
    percent: (100 * (to.time - from.time)) / length,
  });
  const phases = [
    phase(openSwimWords('entryCatch'), entry, caught),
    phase('pull', caught, shoulder),
    phase('push', shoulder, exit),
    phase('recovery', exit, next),
  ];
  // hands marked out of order make no phases; the glyphs show why
  return phases.every((each) => each.to > each.from) ? phases : [];
}

function gapsOf(stroke: Stroke): readonly ScoreGap[] {
  const { entry, exit, next, kicks, shoulder, catch: caught } = stroke;
  const length = next.time - entry.time;
  const gap = (reading: string, hand: TimedEvent | null, kick: TimedEvent | null | undefined): ScoreGap[] =>
    hand && kick
      ? [
          {
            reading,
            handEventId: hand.event.id,
            kickEventId: kick.event.id,
            milliseconds: 1000 * (kick.time - hand.time),
            percent: (100 * (kick.time - hand.time)) / length,
          },
        ]
      : [];
  // only a stroke of two kicks has a first and a second: the others are shown as they are, untied
  if (kicks.length !== 2) return [];
  return [
    ...gap(tiedReadings.entry, entry, kicks[0]?.top),
    ...gap(tiedReadings.catch, caught, kicks[0]?.bottom),
    ...gap(tiedReadings.shoulder, shoulder, kicks[1]?.top),
    ...gap(tiedReadings.exit, exit, kicks[1]?.bottom),
  ];
}

/** What the score draws of the marked strokes, from the same pairing that the timing readings use. */
export function rhythmOf(events: readonly TimedEvent[]): ScoreRhythm {
  const strokes = strokesOf(events);
  const drawn: ScoreStroke[] = strokes.map((stroke) => ({
    number: stroke.number,
    from: stroke.entry.time,
    to: stroke.next.time,
    breathing: stroke.breath !== null,
    phases: phasesOf(stroke),
    gaps: gapsOf(stroke),
  }));
  return { strokes: drawn, cycleStarts: cycleStarts(events).times };
}
