import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitView, panBy, toPicture, toStage, zoomAt } from '../../../renderer/open-swim/stage-view';

const picture = { width: 1920, height: 1080 };
const stage = { width: 900, height: 500 };

describe('the view of the picture', () => {
  it('fits the whole picture in the middle', () => {
    const view = fitView(picture, stage);
    expect(view.scale).toBeCloseTo(500 / 1080, 12);
    expect(toStage(view, { x: 960, y: 540 })).toEqual({ x: 450, y: 250 });
  });

  it('leads from picture to stage and back to the same point', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.integer(),
        fc.integer(),
        (scale, x, y) => {
          const view = { scale, x: 13, y: -7 };
          const there = toPicture(view, toStage(view, { x, y }));
          expect(Math.abs(there.x - x)).toBeLessThan(1e-6 * (1 + Math.abs(x)));
          expect(Math.abs(there.y - y)).toBeLessThan(1e-6 * (1 + Math.abs(y)));
        },
      ),
    );
  });

  it('zooms about the pointer: what is under it stays under it', () => {
    const view = { scale: 1, x: -400, y: -200 };
    const at = { x: 300, y: 200 };
    const zoomed = zoomAt(view, at, 2, picture, stage);
    expect(zoomed?.scale).toBe(2);
    expect(zoomed && toPicture(zoomed, at)).toEqual(toPicture(view, at));
  });

  it('goes back to fitted instead of smaller', () => {
    expect(zoomAt(fitView(picture, stage), { x: 1, y: 1 }, 0.5, picture, stage)).toBeNull();
  });

  it('never loses the picture by panning', () => {
    const far = panBy({ scale: 2, x: 0, y: 0 }, 1e6, -1e6, picture, stage);
    expect(far.x).toBeLessThanOrEqual(stage.width / 3);
    expect(far.y + picture.height * 2).toBeGreaterThan(stage.height * 0.6);
  });
});
