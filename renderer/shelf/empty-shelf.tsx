interface Props {
  readonly onAdd: () => void;
  readonly onPath: () => void;
}

/** The first thing a coach sees of an empty library: how a swim comes to be here. */
export function EmptyShelf({ onAdd, onPath }: Props) {
  return (
    <section className="empty-shelf">
      <h2>No swims yet</h2>
      <ol>
        <li>
          <strong>Film</strong> a short repeat under water, side-on to the lane, the camera still and level.
          60 pictures a second or more shows when a kick turns; slow motion is welcome.
        </li>
        <li>
          <strong>Drop the clip</strong> anywhere in this window. MP4, MOV, MKV and WebM files work. It is
          copied to your library and never leaves this computer.
        </li>
        <li>
          <strong>Say what was swum</strong>, then mark the hands, feet and head on the bench. Readings appear
          as you mark.
        </li>
      </ol>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onAdd}>
          Add swims…
        </button>
        <button type="button" onClick={onPath}>
          Use a file where it lies…
        </button>
      </div>
      <p className="caution">
        Under water: no hyperventilating, one repeat at a time, rest between, and someone watching who can
        act. The rules of your pool come first.
      </p>
    </section>
  );
}
