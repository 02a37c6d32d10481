import type { WindowRequest } from '#core/host-contract/operations/window-operations';
import { saveAll } from '../documents/open-autosaves';
import type { HostClient } from '../host/host-client';
import { commandRegistry } from '../ui/command-registry';
import { openFiles } from '../ui/opened-files';
import { themeStore } from '../ui/theme';
import { openRoute, shelfRoute } from '../ui/use-route';
import { canRun, windowFace } from './window-face';
import { workInHand } from '../ui/work-in-hand';

/** Milliseconds after which a window that did not answer is asked again, and least time between two faces. Our own. */
const again = { ask: 2000, show: 150 } as const;

/** Marks by which a command may have become possible or not: the coach did something, or is on the way to the menu. */
const signs = ['pointerup', 'keyup', 'hashchange', 'blur', 'mouseout'] as const;

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Keeps the window that holds this page in step with it, and does what is wished in its menu or opened with Submark. */
export function serveWindow(host: HostClient): void {
  if (host.transport !== 'ipc') return;
  void doWishes(host);
  showFace(host);
}

function showFace(host: HostClient): void {
  let shown = '';
  let due = false;
  const show = (): void => {
    due = false;
    const face = windowFace();
    const words = JSON.stringify(face);
    if (words === shown) return;
    shown = words;
    void host.call('window/show', face);
  };
  const soon = (): void => {
    if (due) return;
    due = true;
    setTimeout(show, again.show);
  };
  commandRegistry.subscribe(soon);
  workInHand.subscribe(soon);
  themeStore.subscribe(soon);
  for (const sign of signs) window.addEventListener(sign, soon);
  soon();
}

async function doWishes(host: HostClient): Promise<void> {
  let after = 0;
  for (;;) {
    const answer = await host.call('window/next', { after });
    if (!answer.ok) {
      await pause(again.ask);
      continue;
    }
    for (const request of answer.value.requests) {
      await fulfil(request);
      after = request.number;
    }
  }
}

async function fulfil(request: WindowRequest): Promise<void> {
  switch (request.kind) {
    case 'command':
      return runCommand(request.id);
    case 'save':
      // the window waits with its end until the next question says that this is done
      return saveAll();
    case 'files':
      openFiles(request.paths);
      openRoute(shelfRoute);
  }
}

/** A command from the menu, run as its key would run it. */
function runCommand(id: string): void {
  const command = commandRegistry
    .getState()
    .groups.flatMap(({ commands }) => commands)
    .find((each) => each.id === id && canRun(each));
  if (!command) return;
  const field = document.activeElement;
  const typing =
    field instanceof HTMLTextAreaElement || (field instanceof HTMLInputElement && field.type !== 'range');
  // while the coach types, undo is of what was typed, as with the key
  if (typing && command.keys.includes('$mod+z')) document.execCommand('undo');
  else if (typing && command.keys.includes('$mod+Shift+z')) document.execCommand('redo');
  else void command.run();
}
