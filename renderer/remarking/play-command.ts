import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';

/** Space is read where it is let go, because held down it moves the picture: the sheet and the tooltip tell of it. */
export const playCommand = ({ view }: Pick<OpenSwim, 'view'>, label: string): Command => ({
  id: 'remark-play',
  label,
  keys: [],
  told: ['Space'],
  kind: 'view',
  run: () => view.setState({ playing: !view.getState().playing }),
});
