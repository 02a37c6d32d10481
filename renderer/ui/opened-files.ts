import { createStore } from 'zustand/vanilla';

/** Files opened with Submark from outside its page, by their whole paths, until the shelf takes them. */
export const openedFiles = createStore<{ readonly paths: readonly string[] }>(() => ({ paths: [] }));

export function openFiles(paths: readonly string[]): void {
  openedFiles.setState((before) => ({ paths: [...before.paths, ...paths] }));
}

/** Hands over all that wait; each is handed over once. */
export function takeOpenedFiles(): readonly string[] {
  const { paths } = openedFiles.getState();
  if (paths.length > 0) openedFiles.setState({ paths: [] });
  return paths;
}
