import { runCommand, stop } from './command-end';
import {
  type AskedExport,
  everyPlainFlags,
  everyValueFlags,
  type ExportCommand,
} from './export/export-command';
import { exportCommands } from './export/export-commands';
import { commandLineWords } from '#core/words/command-line';

const usage = [
  commandLineWords('usageNpmRunS'),
  ...exportCommands.map(({ name, usage: own, about }) => `  ${name} ${own}\n      ${about}`),
  commandLineWords('swimItsFolder'),
].join('\n');

function read(args: readonly string[], command: ExportCommand): AskedExport {
  const wrong = (): never => stop(2, usage);
  const values = new Map<string, string>();
  const plain = new Set<string>();
  const targets: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const each = args[i] ?? '';
    if ([...everyValueFlags, ...command.valueFlags].includes(each)) {
      const value = args[++i];
      if (value === undefined || value.startsWith('--') || values.has(each)) return wrong();
      values.set(each, value);
    } else if ([...everyPlainFlags, ...command.plainFlags].includes(each)) plain.add(each);
    else if (each.startsWith('--')) return wrong();
    else targets.push(each);
  }
  return { targets, value: (flag) => values.get(flag) ?? null, has: (flag) => plain.has(flag), wrong };
}

await runCommand(async () => {
  const [kind, ...args] = process.argv.slice(2);
  const command = exportCommands.find(({ name }) => name === kind) ?? stop(2, usage);
  await command.run(read(args, command));
});
