import type { MissingReason } from '../../reading';
import type { BodyContext } from './body-context';

/** Why nothing that goes along the pool can be read where the camera moved; null where it can. */
export function movedCamera({ camera }: Pick<BodyContext, 'camera'>): MissingReason | null {
  switch (camera.state) {
    case 'loose':
      return { code: 'needs-still-thing' };
    case 'turned':
      return { code: 'camera-turned' };
    case 'stands':
    case 'carried':
      return null;
  }
}
