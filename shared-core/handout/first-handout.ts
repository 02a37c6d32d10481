import type { ExportSource } from '../exporting/export-source';
import type { EventKind } from '../marks/event-kind';
import { neverCompared } from '../measures/never-compared';
import { targetInForce } from '../swim-file/target-in-force';
import {
  type Handout,
  handoutFileVersion,
  mostHandoutFrames,
  mostHandoutReadings,
  type Paper,
} from './handout-file';

/** Moments worth a picture, the most telling first; a choice of ours. */
const tellingKinds: readonly EventKind[] = [
  'entry',
  'kick-bottom',
  'exit',
  'kick-top',
  'catch',
  'shoulder',
  'breath',
  'breakout',
  'push-off',
];
/** Readings shown when the swimmer has no targets; a choice of ours. */
const tellingReadings = [
  'kick1-top-to-entry',
  'kick2-bottom-to-exit',
  'kick-frequency',
  'kick-amplitude-toe',
  'stroke-rate',
  'knee-angle',
];

/**
 * A handout to begin with, before the coach has chosen: moments with a body line from the middle of the film, readings
 * that have a target first, no cue. `changedAt` is the swim's: nothing is saved until the coach changes something.
 */
export function firstHandout(source: ExportSource, paper: Paper): Handout {
  const { swim } = source;
  return {
    format: 'submark-handout',
    version: handoutFileVersion,
    swimId: swim.id,
    changedAt: swim.changedAt,
    paper,
    frames: [...firstFrames(source)],
    readings: [...firstReadings(source)],
    cue: '',
  };
}

function firstFrames({ swim, clock, lines }: ExportSource): readonly number[] {
  const middle = clock.table.starts.length / 2;
  const near = (frames: readonly number[]): number | undefined =>
    [...frames].sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle))[0];
  const frames: number[] = [];
  const take = (frame: number | undefined): void => {
    if (frame !== undefined && frames.length < mostHandoutFrames && !frames.includes(frame))
      frames.push(frame);
  };
  const framesOf = (kind: EventKind): readonly number[] =>
    swim.events.filter((mark) => mark.kind === kind).map((mark) => mark.frame);
  for (const kind of tellingKinds) take(near(framesOf(kind).filter((frame) => lines.has(frame))));
  for (const kind of tellingKinds) take(near(framesOf(kind)));
  const laid = [...lines.keys()].sort((a, b) => a - b);
  for (const share of [0.5, 0.25, 0.75]) take(laid[Math.floor(laid.length * share)]);
  for (const share of [0.5, 0.25, 0.75]) take(Math.floor(clock.table.starts.length * share));
  return frames;
}

function firstReadings({ readings, swimmer }: ExportSource): readonly string[] {
  const computed = readings
    .filter((each) => each.status === 'computed' && !neverCompared(each.id))
    .map(({ id }) => id);
  const aimedAt = computed.filter((id) => swimmer && targetInForce(swimmer, id));
  const telling = tellingReadings.filter((id) => computed.includes(id));
  return [...new Set([...aimedAt, ...telling, ...computed])].slice(0, mostHandoutReadings);
}
