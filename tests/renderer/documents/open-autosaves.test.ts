import { describe, expect, it, vi } from 'vitest';
import {
  leaveAll,
  saveAll,
  saveBeforeLeaving,
  savedOnLeaving,
} from '../../../renderer/documents/open-autosaves';

function aDocument() {
  let end: () => void = () => undefined;
  return {
    leave: vi.fn(),
    flush: vi.fn(() => new Promise<void>((resolve) => (end = resolve))),
    end: () => end(),
  };
}

describe('documents that are open', () => {
  it('are all kept and written before the page goes, and it is known when they are', async () => {
    const [one, other, closed] = [aDocument(), aDocument(), aDocument()];
    const leave = [savedOnLeaving(one), savedOnLeaving(other)];
    savedOnLeaving(closed)();
    let saved = false;
    const saving = saveAll().then(() => {
      saved = true;
    });
    expect([one, other, closed].map((each) => each.leave.mock.calls.length)).toEqual([1, 1, 0]);
    one.end();
    await Promise.resolve();
    expect(saved).toBe(false);
    other.end();
    await saving;
    for (const each of leave) each();
    leaveAll();
    expect(one.leave).toHaveBeenCalledOnce();
  });

  it('are kept when the page is closed, left, or no longer seen', () => {
    const page = new EventTarget();
    const document = Object.assign(new EventTarget(), { visibilityState: 'visible' });
    saveBeforeLeaving(page as Window, document as unknown as Document);
    const one = aDocument();
    const closed = savedOnLeaving(one);
    document.dispatchEvent(new Event('visibilitychange'));
    expect(one.leave).not.toHaveBeenCalled();
    document.visibilityState = 'hidden';
    document.dispatchEvent(new Event('visibilitychange'));
    page.dispatchEvent(new Event('pagehide'));
    expect(one.leave).toHaveBeenCalledTimes(2);
    closed();
  });
});
