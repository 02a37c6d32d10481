import { words } from './words';

/** Known lengths of a pool. */
export const poolWords = words({
  worldAquaticsFacilities:
    'World Aquatics facilities rules (clause numbers differ by edition); training pools often differ: measure',
  wallEndRedFloats: 'Wall to end of red floats',
  wall15MFloat: 'Wall to 15 m float',
  wall25MFloat: 'Wall to 25 m float',
  wallEndFloor: 'Wall to end of floor line',
  floorLine50M: 'Floor line, 50 m pool',
  floorLine25M: 'Floor line, 25 m pool',
  crossLineAtEnd: 'Cross line at the end of the floor line',
  widthFloorLine: 'Width of the floor line (0.2 to 0.3 m)',
  wallFlags: 'Wall to flags',
  laneWidth: 'Lane width',
  length25MPool: 'Length of a 25 m pool',
  length50MPool: 'Length of a 50 m pool',
  length25YdPool: 'Length of a 25 yd pool',
  n25Yd09144M: '25 yd × 0.9144 m by definition of the yard',
});
