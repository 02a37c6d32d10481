import { describe, expect, it } from 'vitest';
import type { SeenPicture } from '#core/see/cut-square';
import type { PoseNetworks } from '#core/see/find-swimmers';
import { followSwimmer } from '#core/see/follow-swimmer';

/** Networks that take every bright bar of a black picture for a body, lying to the right, as they would see it in what they are given. */
function barNetworks(): PoseNetworks & { readonly detections: () => number } {
  let detections = 0;
  const barsIn = (input: Float32Array, size: number, low: number): { x: number; y: number }[] => {
    const columns = Array.from({ length: size }, (_, x) => {
      const rows: number[] = [];
      for (let y = 0; y < size; y++) if ((input[3 * (y * size + x)] ?? 0) > low + 0.3) rows.push(y);
      return rows;
    });
    const bars: { x: number[]; y: number[] }[] = [];
    columns.forEach((rows, x) => {
      if (rows.length === 0) return;
      const last = bars.at(-1);
      if (last && last.x.at(-1) === x - 1) {
        last.x.push(x);
        last.y.push(...rows);
      } else bars.push({ x: [x], y: [...rows] });
    });
    const mean = (all: readonly number[]): number =>
      all.reduce((sum, each) => sum + each, 0) / all.length + 0.5;
    return bars.map(({ x, y }) => ({ x: mean(x), y: mean(y) }));
  };
  return {
    detections: () => detections,
    async detect(input) {
      detections += 1;
      const boxes = new Float32Array(2254 * 12);
      const scores = new Float32Array(2254).fill(-20);
      barsIn(input, 224, -1).forEach(({ x, y }, i) => {
        // boxes of the finest layer's first place, whose middle is four pixels in
        boxes.set([0, 0, 0, 0, x - 4, y - 4, x - 4 + 30, y - 4], 12 * i);
        scores[i] = 5;
      });
      return { boxes, scores };
    },
    async landmarks(input) {
      const values = new Float32Array(39 * 5);
      // in its own square the bar goes up; the nearest to the middle is the one looked at
      const bars = barsIn(input, 256, 0);
      const bar = bars.sort((a, b) => Math.abs(a.x - 128) - Math.abs(b.x - 128))[0];
      const { x, y } = bar ?? { x: 128, y: 128 };
      for (let i = 0; i < 39; i++) values.set([x, y - (i === 34 ? 100 : 0)], 5 * i);
      return { values, sure: bar ? 0.99 : 0.01, mask: new Float32Array(256 * 256).fill(-5) };
    },
  };
}

function picture(bars: readonly { readonly x: number; readonly y: number }[]): SeenPicture {
  const [width, height] = [640, 360];
  const rgba = new Uint8Array(4 * width * height);
  for (const bar of bars)
    for (let y = bar.y - 8; y < bar.y + 8; y++)
      for (let x = bar.x - 50; x < bar.x + 50; x++)
        if (x >= 0 && y >= 0 && x < width && y < height)
          rgba.fill(255, 4 * (y * width + x), 4 * (y * width + x) + 4);
  return { width, height, rgba, step: 1 };
}

describe('keeping to a swimmer', () => {
  it('finds one by itself and keeps to them without looking over the whole picture again', async () => {
    const networks = barNetworks();
    const follower = followSwimmer(networks, null);
    const places: number[] = [];
    let once = 0;
    for (let i = 0; i < 12; i++) {
      const look = await follower.look(picture([{ x: 150 + 8 * i, y: 180 }]), i / 30);
      if (look.kind === 'seen') places.push(look.body.landmarks.hip.at.x);
      if (i === 0) once = networks.detections();
    }
    expect(places).toHaveLength(12);
    expect(networks.detections()).toBe(once);
    places.forEach((x, i) => {
      expect(Math.abs(x - 150 - 8 * i)).toBeLessThan(3);
    });
  });

  it('sees nobody where nobody is, and looks again only now and then', async () => {
    const networks = barNetworks();
    const follower = followSwimmer(networks, null);
    for (let i = 0; i < 6; i++) expect((await follower.look(picture([]), i / 30)).kind).toBe('lost');
    const looked = networks.detections();
    expect((await follower.look(picture([]), 0.21)).kind).toBe('lost');
    expect(networks.detections()).toBe(2 * looked);
  });

  it('says when the swimmer is lost and finds them where they come up again', async () => {
    const follower = followSwimmer(barNetworks(), null);
    const kinds: string[] = [];
    for (let i = 0; i < 30; i++) {
      const gone = i >= 5 && i < 12;
      kinds.push((await follower.look(picture(gone ? [] : [{ x: 200 + 2 * i, y: 150 }]), i / 30)).kind);
    }
    expect(kinds.slice(0, 5)).toEqual(Array(5).fill('seen'));
    expect(kinds.slice(5, 12)).toEqual(Array(7).fill('lost'));
    // looked for every fifth of a second
    expect(kinds.slice(18)).toEqual(Array(12).fill('seen'));
  });

  it('asks which of several is meant, and keeps to the one the coach said', async () => {
    const two = picture([
      { x: 150, y: 180 },
      { x: 480, y: 180 },
    ]);
    const look = await followSwimmer(barNetworks(), null).look(two, 0);
    expect(look.kind).toBe('several');
    const squares = look.kind === 'several' ? look.found.map(({ square }) => square) : [];
    expect(squares.map(({ x }) => Math.round(x / 10) * 10).sort()).toEqual([150, 480]);
    const meant = squares.find(({ x }) => x > 400) ?? null;
    const follower = followSwimmer(barNetworks(), meant);
    for (let i = 0; i < 3; i++) {
      const own = await follower.look(two, i / 30);
      expect(own.kind === 'seen' && Math.abs(own.body.landmarks.hip.at.x - 480)).toBeLessThan(3);
    }
  });
});
