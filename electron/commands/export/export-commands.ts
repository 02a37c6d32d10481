import { bundleCommand } from './bundle-command';
import { csvCommand, jsonCommand, pairCommand, vttCommand } from './data-commands';
import type { ExportCommand } from './export-command';
import { handoutCommand } from './handout-command';
import { fanCommand, sheetCommand, stillsCommand } from './picture-commands';
import { videoCommand } from './video-command';

/** Every kind of export of the command line; a new one is listed here. */
export const exportCommands: readonly ExportCommand[] = [
  stillsCommand,
  sheetCommand,
  fanCommand,
  handoutCommand,
  csvCommand,
  jsonCommand,
  vttCommand,
  videoCommand,
  pairCommand,
  bundleCommand,
];
