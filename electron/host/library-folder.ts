import path from 'node:path';

/** Where things lie in a library. */
export interface LibraryFolder {
  readonly root: string;
  readonly swims: string;
  readonly bin: string;
  readonly exports: string;
  readonly arriving: string;
  /** Working copies: a cache, everything in it can be made again. */
  readonly copies: string;
  readonly squad: string;
  readonly coach: string;
  readonly practices: string;
  readonly trials: string;
  /** The coach's own drills and patterns. */
  readonly drills: string;
  /** What can be made again from the rest; may be deleted at any time. */
  readonly cache: string;
  readonly about: string;
  /** What the coach chose for this library as a whole. */
  readonly settings: string;
}

export function libraryFolder(root: string): LibraryFolder {
  return {
    root,
    swims: path.join(root, 'swims'),
    bin: path.join(root, 'bin'),
    exports: path.join(root, 'exports'),
    arriving: path.join(root, '.arriving'),
    copies: path.join(root, '.cache', 'copies'),
    squad: path.join(root, 'squad.json'),
    coach: path.join(root, 'coach.json'),
    practices: path.join(root, 'practices'),
    trials: path.join(root, 'trials'),
    drills: path.join(root, 'drills.json'),
    cache: path.join(root, '.cache'),
    about: path.join(root, 'library.json'),
    settings: path.join(root, 'settings.json'),
  };
}
