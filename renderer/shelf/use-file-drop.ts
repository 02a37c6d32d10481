import { useEffect, useState } from 'react';

/** Takes files dropped anywhere on the window; true while something is held over it. */
export function useFileDrop(onFiles: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hold = (event: DragEvent): void => {
      event.preventDefault();
      setOver(true);
    };
    const leave = (): void => setOver(false);
    const drop = (event: DragEvent): void => {
      event.preventDefault();
      setOver(false);
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length > 0) onFiles(files);
    };
    window.addEventListener('dragover', hold);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', hold);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [onFiles]);
  return over;
}
