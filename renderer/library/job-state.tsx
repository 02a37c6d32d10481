import { errorWords } from '#core/host-contract/error-words';
import type { JobRun } from './use-job';
import { libraryWords } from '#core/words/library';

/** How far a job is, with a way to stop it; or why it did not work. */
export function JobState({ job, doing }: { readonly job: JobRun<unknown>; readonly doing: string }) {
  if (job.trouble)
    return (
      <p className="message message-trouble" role="alert">
        <strong>{errorWords(job.trouble).what}</strong> {errorWords(job.trouble).todo}
      </p>
    );
  if (!job.running) return null;
  const { share, words } = job.running;
  return (
    <div className="job-state">
      {share === null ? <progress aria-label={doing} /> : <progress aria-label={doing} value={share} />}
      <output>
        {doing}
        {share === null ? '' : ` ${Math.round(share * 100)} %`} {words && <small>{words}</small>}
      </output>
      <button type="button" onClick={job.stop}>
        {libraryWords('stop')}
      </button>
    </div>
  );
}
