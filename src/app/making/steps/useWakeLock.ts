import { useEffect, useState } from 'react';

/**
 * Keeps the screen awake while the part stands on the page and the page is seen (Screen Wake Lock, W3C). The browser
 * releases the lock when the page is hidden, so it is asked for again when the page comes back.
 * @returns false where the browser refuses, cannot, or has taken the lock back
 */
export function useWakeLock(): boolean {
  const [isAwake, setIsAwake] = useState(true);
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let isOpen = true;
    let isAsking = false;
    const isSeen = (): boolean => document.visibilityState === 'visible';
    const ask = async (): Promise<void> => {
      if (!isSeen() || isAsking || lock?.released === false) return;
      isAsking = true;
      try {
        // Missing in some browsers and on pages without a secure origin: that throws too.
        const held = await navigator.wakeLock.request('screen');
        if (!isOpen) return void held.release();
        lock = held;
        held.addEventListener('release', () => {
          if (isOpen && isSeen()) setIsAwake(false);
        });
        setIsAwake(true);
      } catch {
        // Hidden while it was asked for: it is asked for again when the page is seen.
        if (isOpen && isSeen()) setIsAwake(false);
      } finally {
        isAsking = false;
      }
    };
    const onSight = (): void => void ask();
    document.addEventListener('visibilitychange', onSight);
    void ask();
    return () => {
      isOpen = false;
      document.removeEventListener('visibilitychange', onSight);
      void lock?.release();
    };
  }, []);
  return isAwake;
}
