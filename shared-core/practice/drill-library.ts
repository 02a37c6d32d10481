import { butterflyDrills } from './butterfly-drills';
import { dolphinKickDrills } from './dolphin-kick-drills';
import type { Drill } from './drill-schema';

/** The drills that come with the app; the coach's own stand beside them. */
export const drillLibrary: readonly Drill[] = [...dolphinKickDrills, ...butterflyDrills];

/** A drill by id. The coach's own goes before one of the library with the same id, so that any can be rewritten. */
export function drillById(id: string, own: readonly Drill[]): Drill | null {
  return own.find((drill) => drill.id === id) ?? drillLibrary.find((drill) => drill.id === id) ?? null;
}
