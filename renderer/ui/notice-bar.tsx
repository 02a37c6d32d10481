import { useStore } from 'zustand';
import type { Notices } from './notices';

/** The message at the foot of the window, read aloud by a screen reader as it comes. */
export function NoticeBar({ notices }: { readonly notices: Notices }) {
  const notice = useStore(notices.store, (state) => state.notice);
  const action = notice?.action ?? null;
  return (
    // the pointer only keeps the message from going; everything in it has its own control
    // biome-ignore lint/a11y/noStaticElementInteractions: nothing here is pressed
    <div
      className={notice ? 'notice' : 'notice notice-none'}
      onPointerEnter={notices.hold}
      onPointerLeave={notices.release}
      onFocus={notices.hold}
      onBlur={notices.release}
    >
      <output aria-live="polite">{notice?.words ?? ''}</output>
      {action && (
        <button
          type="button"
          onClick={() => {
            notices.dismiss();
            action.run();
          }}
        >
          {action.label}
        </button>
      )}
    </div>
  );
}
