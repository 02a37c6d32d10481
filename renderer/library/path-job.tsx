import { type ReactNode, useId, useState } from 'react';
import type { JobRun } from './use-job';
import { JobState } from './job-state';

interface Props {
  readonly title: string;
  readonly children: ReactNode;
  readonly fields: readonly { readonly label: string; readonly placeholder: string }[];
  readonly button: string;
  readonly doing: string;
  readonly job: JobRun<unknown>;
  readonly onStart: (paths: readonly string[]) => void;
  readonly done: ReactNode;
}

/** A piece of upkeep that needs a place on this computer. */
export function PathJob({ title, children, fields, button, doing, job, onStart, done }: Props) {
  const heading = useId();
  const [paths, setPaths] = useState<readonly string[]>(fields.map(() => ''));
  return (
    <section className="upkeep" aria-labelledby={heading}>
      <h2 id={heading}>{title}</h2>
      {children}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          // file managers copy a path with quotes around it
          onStart(paths.map((path) => path.trim().replace(/^(["'])(.*)\1$/, '$2')));
        }}
      >
        {fields.map(({ label, placeholder }, at) => (
          <label key={label} className="path-field">
            {label}
            <input
              required
              maxLength={4096}
              spellCheck={false}
              autoCapitalize="off"
              autoComplete="off"
              placeholder={placeholder}
              value={paths[at]}
              onChange={(event) =>
                setPaths(paths.map((path, each) => (each === at ? event.target.value : path)))
              }
            />
          </label>
        ))}
        <button type="submit" disabled={job.running !== null}>
          {button}
        </button>
      </form>
      <JobState job={job} doing={doing} />
      {done && <div className="message upkeep-done">{done}</div>}
    </section>
  );
}
