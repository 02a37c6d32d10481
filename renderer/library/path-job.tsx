import { type ReactNode, useId, useState } from 'react';
import type { WantedPlace } from '#core/host-contract/operations/place-operations';
import type { HostClient } from '../host/host-client';
import { JobState } from './job-state';
import { barePath, PlaceField } from '../ui/place-field';
import type { JobRun } from './use-job';

interface Props {
  readonly title: string;
  readonly children: ReactNode;
  readonly host: HostClient;
  readonly fields: readonly {
    readonly label: string;
    readonly wanted: WantedPlace;
    readonly placeholder: string;
  }[];
  readonly button: string;
  readonly doing: string;
  readonly job: JobRun<unknown>;
  readonly onStart: (paths: readonly string[]) => void;
  readonly done: ReactNode;
}

/** A piece of upkeep that needs a place on this computer. */
export function PathJob({ host, title, children, fields, button, doing, job, onStart, done }: Props) {
  const heading = useId();
  const [paths, setPaths] = useState<readonly string[]>(fields.map(() => ''));
  return (
    <section className="upkeep" aria-labelledby={heading}>
      <h2 id={heading}>{title}</h2>
      {children}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          onStart(paths.map(barePath));
        }}
      >
        {fields.map(({ label, wanted, placeholder }, at) => (
          <PlaceField
            key={label}
            host={host}
            label={label}
            wanted={wanted}
            placeholder={placeholder}
            value={paths[at] ?? ''}
            onChange={(path) => setPaths(paths.map((before, each) => (each === at ? path : before)))}
          />
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
