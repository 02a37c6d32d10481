import type { Layer, SourceFile } from './import-walk';

type Floors = readonly (readonly string[])[];

/**
 * The rooms of each layer by floors, lowest first, and on each floor in order. A room imports from rooms before it, never
 * from one after it. Types count: to know a type is to know its room.
 */
export const floors: Readonly<Record<Layer, Floors>> = {
  'shared-core': [
    ['words', 'units', 'timeline', 'marks', 'swim-file'],
    ['scene', 'uncertainty', 'signal', 'follow', 'see'],
    ['measures', 'drawing', 'compare'],
    ['consent', 'bundle', 'exporting', 'practice', 'handout', 'video'],
    ['host-contract'],
  ],
  electron: [['disk', 'media', 'export', 'video'], ['host'], ['loopback', 'shell'], ['commands']],
  renderer: [
    ['workers', 'host', 'ui', 'documents', 'vision', 'video'],
    ['open-swim'],
    [
      ...['swims', 'card', 'targets', 'camera', 'score', 'plots', 'stage', 'readings'],
      ...['see', 'follow', 'film', 'export', 'video-file', 'still'],
    ],
    ['shelf', 'library', 'season', 'sets', 'trials', 'handout', 'remarking', 'bench', 'pair'],
    ['app'],
  ],
};

/** The room a file lies in; null for one that lies beside the rooms (a layer's own configuration). */
export function roomOf(file: string): string | null {
  const [, room, within] = file.split('/');
  return room !== undefined && within !== undefined ? room : null;
}

/** Imports against the order of their layer's rooms, each with the rule it broke; and rooms that no floor lists. */
export function againstTheFloors(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap(({ file, layer, imports }) => {
    const order = floors[layer].flat();
    const room = roomOf(file);
    if (room === null) return [];
    const place = order.indexOf(room);
    if (place < 0) return [`${file}: the room ${layer}/${room} is on no floor`];
    return imports
      .filter(({ own, target }) => own && target.startsWith(`${layer}/`))
      .flatMap(({ target }) => {
        const other = roomOf(target);
        if (other === null || other === room || order.indexOf(other) < place) return [];
        return [`${file} → ${target}: ${room} may not import from ${other}, which comes after it`];
      });
  });
}
