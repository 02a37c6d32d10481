import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type DoubtAnswer, doubtScale, withDoubtScaled } from '#core/follow/doubt-scale';
import { sureEnough, usefulShare } from '#core/follow/follow-confidence';
import { nextQuestions } from '#core/follow/next-questions';
import { questionContext } from '#core/follow/question-context';
import type { LandmarkName } from '#core/marks/landmark';
import { scenarios } from '../../../sample-clips/scenario';
import { truthSchema } from '../../../sample-clips/truth-schema';
import { asFilmed, filmedLooks, planesOf } from './as-filmed';
import { drawnCoach, evenLines, filmOf, followAsCoach, trueAt, wholeFrames } from './follow-coach';
import { followedSwim } from './followed-swim';
import { openVision } from './open-vision';

/**
 * How well unsure points are told on film that looks filmed: sample clips seen through moving water, under running light, in haze,
 * with noise and hard coding. Two body lines a second, nothing answered. Run with tsx; words of clips and looks as arguments
 * limit it to those; `points` as the first prints every point. Of the points: flagged, off by over 2 % of the body length, and how many of these are
 * flagged; and how many questions are asked till the end, with and without learning from the answers.
 */
const wanted = process.argv.slice(2).filter((each) => each !== 'points');
const everyPoint = process.argv.includes('points');
/** The odds that a point is lost were set on the first two, through the first three looks; the other two prove them. */
const clips = ['butterfly-together', 'streamline-kick', 'butterfly-late-kick', 'kick-on-back'];
/** Seconds of each clip, and body lines a second. */
const seconds = 1.5;
const linesASecond = 2;

const vision = await openVision();
for (const name of clips) {
  if (wanted.some((each) => clips.includes(each)) && !wanted.includes(name)) continue;
  const id = `sample-${name}`;
  const here = (file: string): string =>
    fileURLToPath(new URL(`../../../sample-clips/${file}`, import.meta.url));
  const scenario = scenarios.find((each) => each.id === id);
  if (!scenario) throw new Error(id);
  const truth = truthSchema.parse(JSON.parse(readFileSync(here(`truth/${id}.json`), 'utf8')));
  const { width, height } = scenario.camera;
  const whole = wholeFrames(truth, { width, height });
  const rate = scenario.captureRate;
  const last = Math.min(whole.last, whole.first + Math.round(seconds * rate));
  const clean = await planesOf(here(`library/swims/${id}/${scenario.file}`), last + 2);
  for (const look of [null, ...filmedLooks]) {
    const title = look?.name ?? 'drawn';
    if (wanted.some((each) => !clips.includes(each)) && !wanted.includes(title)) continue;
    const planes = look ? await asFilmed(clean, width, height, rate, look) : clean;
    const film = filmOf(planes, width, height);
    const lines = evenLines(whole.first, last, rate / linesASecond);
    const done = followAsCoach(vision, film, truth, drawnCoach(truth, 1.5, 31), lines, lines.length);
    const length = truth.bodyLengthMetres / truth.metresPerPixel;
    const errorOn = (landmark: LandmarkName, frame: number, x: number, y: number): number => {
      const at = trueAt(truth, frame, landmark);
      return Math.hypot(x - at.x, y - at.y) / length;
    };
    const points = done.followed.flatMap(({ landmark, frame, points: own }) =>
      own.map(([x, y, confidence], i) => ({
        landmark,
        frame: frame + i,
        confidence,
        error: errorOn(landmark, frame + i, x, y),
      })),
    );
    if (everyPoint)
      for (const each of points)
        console.log(
          ['point', name, title, each.landmark, each.frame, each.confidence, each.error.toFixed(5)].join(' '),
        );
    const off = points.filter(({ error }) => error > usefulShare);
    const isFlagged = ({ confidence }: { readonly confidence: number }): boolean => confidence < sureEnough;
    const right = points.filter(({ error }) => error <= usefulShare);
    const arms = truth.events.some(({ kind }) => kind === 'entry') ? 'stroking' : 'stretched';
    /** Every answer until nothing is asked, without following again; `learns` as the app does, from each answer. */
    const answered = (learns: boolean): readonly { readonly error: number }[] => {
      let postures = done.postures;
      const answers: DoubtAnswer[] = [];
      for (const asked: { readonly error: number }[] = []; ; ) {
        const followed = learns ? withDoubtScaled(done.followed, doubtScale(answers)) : done.followed;
        const { swim, clock } = followedSwim(truth, width, height, arms, postures, followed);
        const isMarked = (landmark: LandmarkName, frame: number): boolean =>
          postures.some((each) => each.frame === frame && landmark in each.points);
        const [next] = nextQuestions(followed, questionContext(swim, clock, isMarked));
        const point =
          next && points.find((each) => each.landmark === next.landmark && each.frame === next.frame);
        if (!next || next.sharpens || !point) return asked;
        asked.push(point);
        answers.push({
          confidence: point.confidence,
          offShare: point.error <= usefulShare ? 0 : point.error,
        });
        const mark = { [next.landmark]: trueAt(truth, next.frame, next.landmark) };
        const there = postures.find((each) => each.frame === next.frame);
        postures = there
          ? postures.map((each) => (each === there ? { ...each, points: { ...each.points, ...mark } } : each))
          : [...postures, { frame: next.frame, hidden: [], points: mark }];
      }
    };
    const percent = (some: number, all: number): string =>
      all > 0 ? `${((100 * some) / all).toFixed(0)} %` : '–';
    console.log(
      [
        name.padEnd(20),
        title.padEnd(6),
        `flagged ${percent(points.filter(isFlagged).length, points.length)}`,
        `off ${percent(off.length, points.length)}`,
        `caught ${percent(off.filter(isFlagged).length, off.length)}`,
        `right yet flagged ${percent(right.filter(isFlagged).length, right.length)}`,
        ...[false, true].map((learns) => {
          const asked = answered(learns);
          const rights = asked.filter(({ error }) => error <= usefulShare).length;
          return `${learns ? 'learning' : 'not learning'} from answers: ${asked.length} asked, ${rights} of them right`;
        }),
      ].join('  '),
    );
  }
}
