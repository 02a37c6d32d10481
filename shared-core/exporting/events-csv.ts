import { staffOf } from '../marks/event-kind';
import { eventWords } from '../marks/mark-words';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, localFrameInterval, realTimeOf } from '../timeline/clip-clock';
import { mediaTimeOf } from '../timeline/frame-table';
import { csvText, sixDigits } from './csv-text';

const head = [
  'id',
  'kind',
  'label',
  'staff',
  'frame',
  'frame_shown',
  'seconds',
  'clip_seconds',
  'refined_seconds',
  'refined_sd_seconds',
  'hand',
  'breath_to',
  'metres',
  'from',
  'doubtful',
];

/**
 * Events as CSV, a row an event in order of time. `frame` counts from 0 as in the swim file, `frame_shown` from 1 as on
 * the stage; `seconds` are real seconds from the first picture, `clip_seconds` those of the clip's own clock (longer in
 * slow motion); `refined_seconds` is the instant of an accepted proposal, empty for a plain mark.
 *
 * @param doubt what speaks against these times (`swimDoubtWords`), said in every row
 */
export function eventsCsv(swim: Pick<Swim, 'events'>, clock: ClipClock, doubt: string | null): string {
  const inOrder = [...swim.events].sort((a, b) => a.frame - b.frame);
  return csvText(
    head,
    inOrder.map((mark) => [
      mark.id,
      mark.kind,
      eventWords[mark.kind],
      staffOf(mark.kind),
      mark.frame,
      mark.frame + 1,
      sixDigits(realTimeOf(clock, mark.frame)),
      sixDigits(mediaTimeOf(clock.table, mark.frame)),
      mark.refined
        ? sixDigits(
            realTimeOf(clock, mark.frame) + mark.refined.frames * localFrameInterval(clock, mark.frame),
          )
        : '',
      mark.refined ? sixDigits(mark.refined.sdSeconds) : '',
      mark.hand ?? '',
      mark.breathTo ?? '',
      mark.metres ?? '',
      mark.from,
      doubt ?? '',
    ]),
  );
}
