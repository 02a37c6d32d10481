import { useEffect } from 'react';
import { useOpenSwim } from '../open-swim/open-swim';

/** Beside 0, the whole picture. */
export const sceneKey = '8';
export const bareKey = '9';

const typing = (target: EventTarget | null): boolean =>
  document.querySelector('dialog[open]') !== null ||
  (target instanceof HTMLElement &&
    (target.isContentEditable ||
      (target instanceof HTMLInputElement && target.type !== 'range') ||
      target.closest('textarea, select') !== null));

/** While its key is held, the picture stands bare. */
export function useBarePicture(): void {
  const { view } = useOpenSwim();
  useEffect(() => {
    const set = (bare: boolean): void => {
      if (view.getState().bare !== bare) view.setState({ bare });
    };
    const down = (event: KeyboardEvent): void => {
      const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
      if (event.key === bareKey && plain && !typing(event.target)) set(true);
    };
    const up = (event: KeyboardEvent): void => {
      if (event.key === bareKey) set(false);
    };
    // a key let go in another window is never told
    const away = (): void => set(false);
    window.addEventListener('keydown', down);
    window.addEventListener('keyup', up);
    window.addEventListener('blur', away);
    return () => {
      window.removeEventListener('keydown', down);
      window.removeEventListener('keyup', up);
      window.removeEventListener('blur', away);
      away();
    };
  }, [view]);
}
