import { useCallback, useEffect, useState } from 'react';

/** Our default: long enough to read a sentence twice. */
const shownMs = 4500;

/** A short message at the foot of the window that goes away by itself; a newer one takes its place. */
export function useBriefMessage(): {
  readonly say: (words: string) => void;
  readonly message: React.ReactNode;
} {
  const [said, setSaid] = useState<{ readonly words: string; readonly number: number } | null>(null);
  const say = useCallback((words: string) => {
    setSaid((before) => ({ words, number: (before?.number ?? 0) + 1 }));
  }, []);
  useEffect(() => {
    if (!said) return;
    const timer = setTimeout(() => setSaid(null), shownMs);
    return () => clearTimeout(timer);
  }, [said]);
  return {
    say,
    message: <output className={said ? 'brief-message shown' : 'brief-message'}>{said?.words ?? ''}</output>,
  };
}
