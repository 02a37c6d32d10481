import type { ToolId } from '../../open-swim/view-store';
import { bodyLineTool } from './body-line-tool';
import { levelTool, scaleTool, surfaceTool } from './line-tool';
import { lookTool } from './look-tool';
import { planeTool, straightTool } from './points-tool';
import { pointTool } from './point-tool';
import { stillTool } from './still-tool';
import type { StageTool } from './stage-tool';

export const stageTools: Readonly<Record<ToolId, StageTool>> = {
  look: lookTool,
  point: pointTool,
  'body-line': bodyLineTool,
  level: levelTool,
  surface: surfaceTool,
  scale: scaleTool,
  plane: planeTool,
  straight: straightTool,
  still: stillTool,
};
