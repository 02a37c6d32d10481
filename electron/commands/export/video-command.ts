import { frameAtPlace, placesOf, sharedPlaces, timeAtPlace } from '#core/compare/pair-clock';
import { firstLocks, type Lock } from '#core/compare/pair-lock';
import { pairPartOf } from '#core/compare/pair-part';
import { eventKinds } from '#core/marks/event-kind';
import { videoPlanSchema } from '#core/video/video-plan';
import { exportVideo, type VideoSource } from '../../video/export-video';
import { stop } from '../command-end';
import { clipOnDisk, orStop, readSwimOnDisk, sourceOf } from '../swim-on-disk';
import { checkConsent } from './check-consent';
import type { AskedExport, ExportCommand } from './export-command';
import { moveOut } from './move-out';
import { commandLineWords } from '#core/words/command-line';

const plainFlags = [
  '--mirror-a',
  '--mirror-b',
  '--same-length',
  '--keep-in-view',
  '--angles',
  '--no-body-line',
  '--no-score',
  '--no-events',
  '--no-words',
  '--sound',
] as const;

function numberOf(asked: AskedExport, flag: string): number | null {
  const text = asked.value(flag);
  if (text === null) return null;
  const value = Number(text.replace('−', '-').replace(',', '.'));
  return Number.isFinite(value) ? value : stop(2, commandLineWords('needsNumberNone', { flag, text }));
}

export const videoCommand: ExportCommand = {
  name: 'video',
  about: commandLineWords('stretchOneSwim'),
  usage:
    '<swim> [<other swim>] [--from S] [--to S] [--slow 4] [--rate 30] [--width 1920] [--run time|cycle] [--lock entry] [--lay hip|shoulder] [--caption "WORDS"] [--mirror-a] [--mirror-b] [--same-length] [--keep-in-view] [--angles] [--no-body-line] [--no-score] [--no-events] [--no-words] [--sound]',
  valueFlags: ['--from', '--to', '--slow', '--rate', '--width', '--run', '--lock', '--lay', '--caption'],
  plainFlags,
  async run(asked) {
    if (asked.targets.length < 1 || asked.targets.length > 2) return asked.wrong();
    const found = await Promise.all(asked.targets.map(readSwimOnDisk));
    checkConsent(asked, found);
    const sources: VideoSource[] = [];
    for (const each of found)
      sources.push({ swim: each.swim, clip: await clipOnDisk(each), knowledge: each.knowledge });
    const exported = found.map(sourceOf);
    const mode = asked.value('--run') ?? 'time';
    if (mode !== 'time' && mode !== 'cycle') return asked.wrong();
    const locks = locksOf(asked, exported);
    const parts = exported.map(({ swim, clock }, i) => {
      const stretch = { first: 0, last: clock.table.starts.length - 1 };
      const lock = locks[i] ?? { on: 'frame', frame: 0 };
      return pairPartOf(
        swim,
        found[i]?.knowledge ?? { swimmer: null, markingError: null },
        clock,
        stretch,
        lock,
      );
    });
    const sides = parts.map(({ side }) => side);
    const [first] = sides;
    if (!first) return asked.wrong();
    const whole = sharedPlaces(sides, mode) ?? placesOf(sides, mode);
    const scale = mode === 'cycle' ? 0.01 : 1;
    const from = (numberOf(asked, '--from') ?? whole.from / scale) * scale;
    const to = (numberOf(asked, '--to') ?? whole.to / scale) * scale;
    const cards = exported.map(({ swim }) => swim.card);
    const plan = videoPlanSchema.safeParse({
      sides: parts.map(({ swim, side }, i) => ({
        swimId: swim.id,
        stretch: { first: side.first, last: side.last },
        lock: locks[i] ?? { on: 'frame', frame: 0 },
        frame: frameAtPlace(side, mode, from),
        mirrored: asked.has(i === 0 ? '--mirror-a' : '--mirror-b'),
        title:
          `${cards[i]?.swimmerName || 'swimmer'} · ${cards[i]?.drill || cards[i]?.stroke} · ${cards[i]?.date}`.slice(
            0,
            200,
          ),
      })),
      mode,
      lead: 0,
      seconds: timeAtPlace(first, mode, to) - timeAtPlace(first, mode, from),
      slow: numberOf(asked, '--slow') ?? 4,
      rate: numberOf(asked, '--rate') ?? 30,
      width: numberOf(asked, '--width') ?? 1920,
      sameLength: asked.has('--same-length'),
      keepInView: asked.has('--keep-in-view'),
      lay: asked.value('--lay'),
      show: {
        bodyLine: !asked.has('--no-body-line'),
        angles: asked.has('--angles'),
        score: !asked.has('--no-score'),
        flashes: !asked.has('--no-events'),
        facts: !asked.has('--no-words'),
      },
      caption: asked.value('--caption') ?? '',
      sound: asked.has('--sound'),
      name: [...new Set(cards.map((card) => `${card.swimmerName || 'swimmer'} ${card.date}`))]
        .join(' and ')
        .slice(0, 150),
    });
    if (!plan.success) {
      const issue = plan.error.issues[0];
      return stop(
        2,
        `${issue?.path.join('.') ?? commandLineWords('video')}: ${issue?.message ?? commandLineWords('cantMadeLike')}.`,
      );
    }
    await makeVideo(asked, sources, plan.data);
  },
};

/** Each swim's lock: the first event of the kind asked for, else of the first kind both have, else the first frame. */
function locksOf(asked: AskedExport, exported: readonly ReturnType<typeof sourceOf>[]): readonly Lock[] {
  const kind = asked.value('--lock');
  if (kind !== null && !eventKinds.some((each) => each === kind))
    return stop(2, commandLineWords('thereNoKindEvent', { kind, eventKinds: eventKinds.join(', ') }));
  if (kind !== null)
    return exported.map(({ swim, context }): Lock => {
      const event = context.events.find((each) => each.event.kind === kind);
      return event
        ? { on: 'event', id: event.event.id }
        : stop(1, commandLineWords('noMarkedSwim', { kind, swim: swim.id }));
    });
  const [a, b] = exported;
  if (!a || !b) return [{ on: 'frame', frame: 0 }];
  return firstLocks({ events: a.context.events, from: 0 }, { events: b.context.events, from: 0 });
}

async function makeVideo(
  asked: AskedExport,
  sources: readonly VideoSource[],
  plan: Parameters<typeof exportVideo>[0]['plan'],
): Promise<void> {
  let told = -1;
  const report = (share: number | null): void => {
    const percent = Math.floor(100 * (share ?? 0));
    if (!process.stderr.isTTY || percent === told) return;
    told = percent;
    process.stderr.write(`\r${percent} %`);
  };
  await moveOut(asked, async (folder, signal) => {
    const made = await exportVideo({ sources, plan, folder, tempId: 'video', signal, report });
    if (told >= 0) process.stderr.write('\r      \r');
    return orStop(made);
  });
}
