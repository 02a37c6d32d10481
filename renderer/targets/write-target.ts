import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { type Target, withTarget } from '#core/swim-file/target-in-force';
import { changeSquad } from '../card/write-swimmer';
import type { HostClient } from '../host/host-client';
import { targetsWords } from '#core/words/targets';

/** Sets a swimmer's target on disk, beside whatever else was written meanwhile; the swimmer as it is then. */
export async function writeTarget(
  host: HostClient,
  swimmerId: string,
  target: Target,
): Promise<Result<Swimmer>> {
  const done = await changeSquad<Result<Swimmer>>(host, (squad) => {
    const known = squad.swimmers.find(({ id }) => id === swimmerId);
    if (!known) return { squad, value: failure('not-found', { name: targetsWords('swimmer') }) };
    const swimmer = { ...known, targets: withTarget(known.targets, target) };
    const swimmers = squad.swimmers.map((each) => (each.id === swimmerId ? swimmer : each));
    return { squad: { ...squad, swimmers }, value: success(swimmer) };
  });
  return done.ok ? done.value : done;
}
