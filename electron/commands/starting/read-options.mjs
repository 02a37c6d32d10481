const usage = 'Usage: npm start -- [--no-open] [--port N] [--library FOLDER] [--get-electron]';
const flags = { '--no-open': 'plain', '--get-electron': 'plain', '--port': 'value', '--library': 'value' };

/** The start command's arguments, or `unknown` with words. */
export function readOptions(args) {
  const options = { open: true, getElectron: false, port: undefined, library: undefined };
  for (let at = 0; at < args.length; at++) {
    const flag = args[at];
    const value = flags[flag] === 'value' ? args[++at] : undefined;
    if (!(flag in flags)) return { unknown: `Unknown: ${flag}\n${usage}` };
    if (flags[flag] === 'value' && (value === undefined || value.startsWith('--')))
      return { unknown: `${flag} needs a value.\n${usage}` };
    if (flag === '--no-open') options.open = false;
    if (flag === '--get-electron') options.getElectron = true;
    if (flag === '--port') {
      const port = Number(value);
      if (!Number.isInteger(port) || port < 0 || port > 65_535)
        return { unknown: `--port needs a number from 0 to 65535.\n${usage}` };
      options.port = port;
    }
    if (flag === '--library') options.library = value;
  }
  return options;
}
