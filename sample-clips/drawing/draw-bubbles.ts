import type { SKRSContext2D } from '@napi-rs/canvas';
import { seeded } from '../model/seeded';
import type { Body, PoolXY } from '../model/swimmer-model';
import { waterSurface } from '../model/water-surface';
import type { TrueEvent } from '../model/true-events';
import { type Camera, toPicture } from './camera';

/** A burst of air or water: where it is born as time goes, for how long, and what becomes of it. */
interface Burst {
  readonly time: number;
  readonly lasts: number;
  readonly many: number;
  readonly from: (body: Body) => PoolXY;
  readonly kind: 'bubbles' | 'spray';
  readonly seed: number;
}

/** What a swim stirs up, from its own events: bubbles behind entering hands and kicking feet, breath let out, spray. */
export function burstsOf(
  events: readonly TrueEvent[],
  bodyAt: (time: number) => Body,
  length: number,
  times: number,
): readonly Burst[] {
  const bursts: Burst[] = [];
  events.forEach(({ kind, time }, i) => {
    const seed = 101 + 7 * i;
    if (kind === 'entry') {
      bursts.push({ time, lasts: 0.3, many: 70, from: (b) => b.fingertip, kind: 'bubbles', seed });
      bursts.push({ time, lasts: 0.16, many: 34, from: (b) => b.wrist, kind: 'spray', seed: seed + 1 });
    }
    if (kind === 'exit')
      bursts.push({
        time: time - 0.05,
        lasts: 0.28,
        many: 40,
        from: (b) => b.fingertip,
        kind: 'spray',
        seed,
      });
    if (kind === 'breath')
      bursts.push({ time: time - 0.4, lasts: 0.36, many: 50, from: (b) => b.mouth, kind: 'bubbles', seed });
    if (kind === 'kick-top' && bodyAt(time).toe.y > -0.1) {
      bursts.push({ time: time - 0.05, lasts: 0.22, many: 60, from: (b) => b.toe, kind: 'bubbles', seed });
      bursts.push({
        time: time - 0.04,
        lasts: 0.14,
        many: 44,
        from: (b) => b.toe,
        kind: 'spray',
        seed: seed + 1,
      });
    }
  });
  // a thin thread of air from nose and mouth all along
  for (let t = -0.5; t < length; t += 0.5)
    bursts.push({
      time: t,
      lasts: 0.5,
      many: 9,
      from: (b) => b.mouth,
      kind: 'bubbles',
      seed: 900 + Math.round(10 * t),
    });
  return bursts.map((burst) => ({ ...burst, many: burst.many * times }));
}

export function drawBubbles(
  context: SKRSContext2D,
  camera: Camera,
  bursts: readonly Burst[],
  bodyAt: (time: number) => Body,
  time: number,
): void {
  const unit = 1 / camera.metresPerPixel;
  for (const burst of bursts) {
    if (time < burst.time || time > burst.time + burst.lasts + 1.4) continue;
    const random = seeded(burst.seed);
    for (let i = 0; i < burst.many; i++) {
      const born = burst.time + burst.lasts * random();
      const size = random() ** 3;
      const [a, b, c, d] = [random() - 0.5, random() - 0.5, random(), random()];
      const age = time - born;
      const lives = burst.kind === 'spray' ? 0.24 + 0.3 * c : 0.5 + 0.9 * c;
      if (age < 0 || age > lives) continue;
      const root = burst.from(bodyAt(born));
      const fade = Math.min(1, (lives - age) / 0.2);
      if (burst.kind === 'spray') {
        const y = 0.01 + (0.6 + 1.3 * d) * age * (0.5 + c) - 4.9 * age * age;
        if (y < 0) continue;
        const at = toPicture(camera, { x: root.x + 0.1 * a + (0.5 + 1.6 * b) * age, y }, time);
        context.fillStyle = `rgba(250,254,255,${0.75 * fade})`;
        context.beginPath();
        context.arc(at.x, at.y, Math.max(0.7, (0.004 + 0.012 * size) * unit), 0, 2 * Math.PI);
        context.fill();
        continue;
      }
      const rise = (0.1 + 0.22 * Math.sqrt(size) + 0.1 * d) * age;
      const x = root.x + 0.07 * a + 0.5 * Math.exp(-4 * age) * age + 0.02 * Math.sin(8 * age + 6 * d);
      const y = Math.min(root.y + 0.07 * b + rise, waterSurface(x, time) - 0.008);
      const at = toPicture(camera, { x, y }, time);
      const radius = Math.max(0.8, (0.003 + 0.014 * size) * unit);
      const ball = context.createRadialGradient(
        at.x - 0.3 * radius,
        at.y - 0.4 * radius,
        0,
        at.x,
        at.y,
        radius,
      );
      ball.addColorStop(0, `rgba(255,255,255,${0.85 * fade})`);
      ball.addColorStop(0.55, `rgba(206,240,246,${0.42 * fade})`);
      ball.addColorStop(0.88, `rgba(244,254,255,${0.72 * fade})`);
      ball.addColorStop(1, 'rgba(244,254,255,0)');
      context.fillStyle = ball;
      context.beginPath();
      context.arc(at.x, at.y, radius, 0, 2 * Math.PI);
      context.fill();
    }
  }
}
