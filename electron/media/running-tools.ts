interface Running {
  kill(signal?: NodeJS.Signals): boolean;
  once(event: 'exit' | 'error', heard: () => void): unknown;
}

const running = new Set<Running>();

/** Notes a program that was started, until it has ended: none may outlast ours. */
export function noteTool<Tool extends Running>(tool: Tool): Tool {
  running.add(tool);
  const gone = (): void => {
    running.delete(tool);
  };
  tool.once('exit', gone);
  tool.once('error', gone);
  return tool;
}

/** Ends every program that still runs, at once. For when ending in order took too long or isn't waited for. */
export function endTools(): void {
  for (const tool of running) tool.kill('SIGKILL');
}
