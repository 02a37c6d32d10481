import { describe, expect, it } from 'vitest';
import { shownWhileMarking } from '../../../renderer/stage/shown-while-marking';

describe('what lies over the picture', () => {
  it('is only what is being marked: points without angles and scene, the scene without the body, moments on nothing', () => {
    expect(shownWhileMarking('body-line', false)).toEqual({ scene: false, body: true, rest: false });
    for (const tool of ['level', 'surface', 'scale', 'plane', 'straight', 'still'] as const)
      expect(shownWhileMarking(tool, false)).toEqual({ scene: true, body: false, rest: false });
    expect(shownWhileMarking('point', true)).toEqual({ scene: false, body: false, rest: false });
    expect(shownWhileMarking('point', false)).toEqual({ scene: true, body: true, rest: true });
  });
});
