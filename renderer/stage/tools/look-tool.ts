import type { StageTool } from './stage-tool';

/** Takes nothing in hand: every press moves the picture. Where swims are looked at and not marked. */
export const lookTool: StageTool = {
  id: 'look',
  press: () => false,
  drag: () => undefined,
  release: () => undefined,
};
