import type { BrowserWindow, NativeTheme } from 'electron';
import type { WindowFace } from '#core/host-contract/operations/window-operations';
import type { TaskBar } from './task-bar';
import { firstGround, type KeptWindow } from './window-state';

interface Around {
  readonly window: Pick<BrowserWindow, 'isDestroyed' | 'setBackgroundColor'>;
  readonly nativeTheme: Pick<NativeTheme, 'themeSource'>;
  readonly taskBar: TaskBar;
  readonly kept: KeptWindow;
  readonly setMenu: (groups: WindowFace['groups']) => void;
  /** As the page looked last time. */
  readonly dark: boolean | undefined;
}

/** What the system draws around the page, made to go with it: title bar and dialogs, menu, task bar. */
export class WindowFrame {
  private menu = '';

  constructor(private readonly around: Around) {
    this.theme(around.dark ?? firstGround.dark);
  }

  show({ look, groups, work }: WindowFace): void {
    const { window, taskBar, kept, setMenu } = this.around;
    if (window.isDestroyed()) return;
    this.theme(look.dark);
    window.setBackgroundColor(look.ground);
    kept.ground(look.ground, look.dark);
    taskBar.tell('page', work);
    // a menu that is built again closes while it is open
    const menu = JSON.stringify(groups);
    if (menu === this.menu) return;
    this.menu = menu;
    setMenu(groups);
  }

  private theme(dark: boolean): void {
    this.around.nativeTheme.themeSource = dark ? 'dark' : 'light';
  }
}
