import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Squad, Swimmer } from '#core/swim-file/squad-schema';
import type { HostClient } from '../host/host-client';
import { cardFormWords } from '#core/words/card-form';

/**
 * Changes the squad on disk: reads it fresh, so that what another window wrote meanwhile stays, and tries once more
 * when it changed between reading and writing.
 */
export async function changeSquad<T>(
  host: HostClient,
  change: (squad: Squad) => { readonly squad: Squad; readonly value: T },
): Promise<Result<T>> {
  for (let tries = 0; ; tries++) {
    const opened = await host.call('squad/read', {});
    if (!opened.ok) return opened;
    const { squad, value } = change(opened.value.squad);
    if (squad === opened.value.squad) return success(value);
    const written = await host.call('squad/write', { squad, baseRevision: opened.value.revision });
    if (written.ok) return success(value);
    if (written.error.code !== 'conflict' || tries > 0) return written;
  }
}

/** A swimmer of whom only the name is known. */
export const newSwimmer = (id: string, name: string): Swimmer => ({
  id,
  name,
  birthYear: null,
  bodyTable: null,
  streamlineMetres: null,
  consent: null,
  targets: [],
  invented: false,
});

const sameName = (a: string, b: string): boolean => a.toLocaleLowerCase() === b.toLocaleLowerCase();

/** The swimmer of that name, put into the squad when it isn't there yet; null for an empty name. */
export async function enrolSwimmer(
  host: HostClient,
  name: string,
  makeId: () => string,
): Promise<Result<Swimmer | null>> {
  const trimmed = name.trim();
  if (trimmed === '') return success(null);
  return changeSquad<Swimmer | null>(host, (squad) => {
    const known = squad.swimmers.find((each) => sameName(each.name, trimmed));
    if (known) return { squad, value: known };
    const swimmer = newSwimmer(makeId(), trimmed);
    return { squad: { ...squad, swimmers: [...squad.swimmers, swimmer] }, value: swimmer };
  });
}

/** Writes what the coach changed of a swimmer; a swimmer removed meanwhile is `not-found`, a taken name `already-there`. */
export async function writeSwimmer(
  host: HostClient,
  id: string,
  said: Partial<Omit<Swimmer, 'id'>>,
): Promise<Result<null>> {
  const done = await changeSquad<Result<null>>(host, (squad) => {
    const swimmer = squad.swimmers.find((each) => each.id === id);
    if (!swimmer) return { squad, value: failure('not-found', { name: cardFormWords('swimmer2') }) };
    const name = said.name;
    const taken =
      name !== undefined && squad.swimmers.some((each) => each.id !== id && sameName(each.name, name));
    if (taken) return { squad, value: failure('already-there', { name }) };
    const swimmers = squad.swimmers.map((each) => (each.id === id ? { ...each, ...said } : each));
    return { squad: { ...squad, swimmers }, value: success(null) };
  });
  return done.ok ? done.value : done;
}
