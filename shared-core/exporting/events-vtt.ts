import { markPhrase } from '../marks/mark-words';
import type { EventMark, Swim } from '../swim-file/swim-schema';
import type { FrameTable } from '../timeline/frame-table';
import { exportsWords } from '../words/exports';

/** Longest a caption stays, seconds of the clip's own clock; our default: time enough to read three words. */
const longestSeconds = 1;

/** "00:01:02.345": hours are always written, as every player takes them. */
function stamp(seconds: number): string {
  const whole = Math.round(seconds * 1000);
  const two = (value: number): string => String(value).padStart(2, '0');
  const rest = String(whole % 1000).padStart(3, '0');
  const all = Math.floor(whole / 1000);
  return `${two(Math.floor(all / 3600))}:${two(Math.floor(all / 60) % 60)}:${two(all % 60)}.${rest}`;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/**
 * Events as WebVTT (W3C): captions on the clip's own clock, so that any player shows them over the clip itself. Each
 * begins with its frame's picture and ends with the next event or after a second; events of one frame share a caption.
 * Times are the container's, rounded up to the millisecond so that the caption's own picture is on screen.
 *
 * @param doubt what speaks against the marks or their times (`swimDoubtWords`); a note in the file
 */
export function eventsVtt(
  swim: Pick<Swim, 'events' | 'card'>,
  table: FrameTable,
  doubt: string | null,
): string {
  const byFrame = new Map<number, EventMark[]>();
  for (const mark of [...swim.events].sort((a, b) => a.frame - b.frame)) {
    const list = byFrame.get(mark.frame);
    if (list) list.push(mark);
    else byFrame.set(mark.frame, [mark]);
  }
  const last = table.starts.length - 1;
  const begins = (frame: number): number => {
    const tick = frame > last ? table.endTick : (table.starts[Math.max(0, frame)] as number);
    return Math.ceil((Math.max(0, tick) / table.ticksPerSecond) * 1000 - 1e-6) / 1000;
  };
  const frames = [...byFrame.keys()].filter((frame) => frame <= last);
  const cues = frames.map((frame, index) => {
    const from = begins(frame);
    const next = frames[index + 1];
    const until = Math.min(
      from + longestSeconds,
      next === undefined ? Number.POSITIVE_INFINITY : begins(next),
    );
    const to = Math.max(until, from + 0.001);
    const words = (byFrame.get(frame) ?? []).map((mark) => escaped(sentence(markPhrase(mark)))).join('\n');
    return `frame-${frame}\n${stamp(from)} --> ${stamp(to)}\n${words}\n`;
  });
  const about = escaped([swim.card.swimmerName, swim.card.date].filter(Boolean).join(', ')).replace(
    /[\r\n]+/g,
    ' ',
  );
  const doubtful =
    doubt === null
      ? ''
      : `NOTE\n${exportsWords('doubtfulCaptions', { doubt: escaped(doubt).replace(/[\r\n]+/g, ' ') })}\n\n`;
  const title = about ? exportsWords('captionsOf', { about }) : exportsWords('captions');
  return `WEBVTT\n\nNOTE\n${title}\n\n${doubtful}${cues.join('\n')}`;
}
