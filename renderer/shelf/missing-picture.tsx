import { useEffect, useState } from 'react';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly swimId: string;
  readonly address: string;
  readonly retake: (swimId: string) => Promise<boolean>;
}

/** In the place of a swim's picture while it is taken anew from the film. */
export function MissingPicture({ swimId, address, retake }: Props) {
  const [taken, setTaken] = useState(false);
  useEffect(() => {
    let gone = false;
    void retake(swimId).then((there) => {
      if (!gone) setTaken(there);
    });
    return () => {
      gone = true;
    };
  }, [swimId, retake]);
  return taken ? (
    <img src={address} alt="" />
  ) : (
    <span className="swim-tile-blank">{shelfWords('noPictureYet')}</span>
  );
}
