import { describe, expect, it } from 'vitest';
import { aSwim } from '../../shared-core/swim-file/a-swim';
import type { OpenSwim } from '../../../renderer/open-swim/open-swim';
import { createSwimDocument } from '../../../renderer/open-swim/swim-document';
import { createViewStore, type ViewState } from '../../../renderer/open-swim/view-store';
import { pointTool } from '../../../renderer/stage/tools/point-tool';

const place = { x: 200, y: 100 };

/** A swim with a level line and a laid hip at its left end, or with only one of them. */
function pressed(shown: Partial<ViewState>, what: 'scene' | 'point'): boolean {
  const swim = aSwim();
  const document = createSwimDocument({
    ...swim,
    scene: { ...swim.scene, level: what === 'scene' ? { a: place, b: { x: 600, y: 100 } } : null },
    postures: what === 'point' ? [{ frame: 0, hidden: [], points: { hip: place } }] : [],
  });
  const view = createViewStore({ shownFrame: 0, ...shown });
  const session = { document, view } as unknown as OpenSwim;
  const took = pointTool.press(session, { x: place.x + 2, y: place.y }, 10);
  document.cancel();
  return took;
}

describe('what is not drawn', () => {
  it('can’t be taken hold of: ends of a hidden scene, anything on a bare picture', () => {
    expect(pressed({}, 'scene')).toBe(true);
    expect(pressed({ showScene: false }, 'scene')).toBe(false);
    expect(pressed({ bare: true }, 'scene')).toBe(false);
    expect(pressed({ showScene: false }, 'point')).toBe(true);
    expect(pressed({ bare: true }, 'point')).toBe(false);
  });
});
