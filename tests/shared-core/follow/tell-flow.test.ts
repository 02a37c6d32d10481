import { beforeAll, expect, it } from 'vitest';
import { greyPyramid } from '#core/follow/grey-pyramid';
import type { Vision } from '#core/follow/vision';
import type { GreyPicture } from '../../../shared-core/follow/grey-picture';
import { createFlowTeller } from '../../../shared-core/follow/tell-flow';
import { openVision } from '../../bench/follow/open-vision';

let vision: Vision;
beforeAll(async () => {
  vision = await openVision();
});

const [width, height] = [320, 200];
/** A patterned pool wall moved by (dx, dy), and a bright body in its middle moved by (bx, by). */
function picture(frame: number, dx: number, dy: number, bx: number, by: number): GreyPicture {
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const wall =
        90 + 25 * Math.sin((x - dx) / 7) * Math.cos((y - dy) / 9) + 15 * Math.sin((x - dx + y - dy) / 15);
      const body = Math.hypot((x - 160 - bx) / 2, y - 100 - by) < 14;
      grey[y * width + x] = Math.round(
        body ? 210 + 20 * Math.sin((x - bx) / 4) * Math.sin((y - by) / 5) : wall,
      );
    }
  return { frame, x: 0, y: 0, width, height, grey };
}

it('tells what the camera did from what lies behind the swimmer, and what the swimmer did from the swimmer', () => {
  const first = picture(0, 0, 0, 0, 0);
  const second = picture(1, -4, 1.5, 3, -2);
  const bodyLength = 200;
  const pyramid = ({ grey }: GreyPicture) => greyPyramid(width, height, grey, 3);
  const teller = createFlowTeller(vision, pyramid(first), bodyLength);
  teller.show(pyramid(first));
  teller.show(pyramid(second));
  const places = new Map([['hip' as const, { x: 160, y: 100 }]]);
  const moved = teller.background(first, second, places);
  expect(moved?.x).toBeCloseTo(-4, 0);
  expect(moved?.y).toBeCloseTo(1.5, 0);
  const hip = teller.tell(first, second, places, places).get('hip');
  expect(Math.hypot((hip?.at.x ?? 0) - 163, (hip?.at.y ?? 0) - 98)).toBeLessThan(1.5);
  teller.close();
});
