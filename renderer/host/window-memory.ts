import { memoryKeySchema } from '#core/host-contract/operations/memory-operations';
import type { HostClient } from './host-client';

type Outbox = Pick<Storage, 'length' | 'key' | 'getItem' | 'setItem' | 'removeItem'>;

/** What the window remembers, by the interface of the browser's storage. */
export interface WindowMemory extends Outbox {
  /** Resolves when what the host remembers has come, or can't. */
  readonly ready: Promise<void>;
  /** Takes up with the host: from then on what is remembered is the host's. */
  connect(host: Pick<HostClient, 'call'>): Promise<void>;
}

/** In the storage, where the host still has to forget something. */
const forgotten = '';

/**
 * The window's memory, kept by the host so that it follows from browser to desktop. The window's own storage is its
 * outbox: what the host hasn't taken yet waits there, also what an earlier version of Submark had kept there.
 */
export function createWindowMemory(outbox: Outbox): WindowMemory {
  const kept = new Map<string, string>();
  let host: Pick<HostClient, 'call'> | null = null;
  let arrived = (): void => undefined;
  const ready = new Promise<void>((resolve) => {
    arrived = resolve;
  });
  const waiting = (): string[] =>
    Array.from({ length: outbox.length }, (_, at) => outbox.key(at)).filter(
      (key): key is string => key !== null && memoryKeySchema.safeParse(key).success,
    );

  const send = async (key: string, text: string): Promise<void> => {
    if (!host) return;
    const taken = await host.call('memory/keep', { key, text: text === forgotten ? null : text });
    // something newer may wait by now
    if (taken.ok && outbox.getItem(key) === text) outbox.removeItem(key);
  };
  const put = (key: string, text: string): void => {
    kept.set(key, text);
    try {
      outbox.setItem(key, text);
    } finally {
      // a storage that is full or forbidden is no reason not to tell the host
      void send(key, text);
    }
  };
  const read = (key: string): string | null => {
    const text = outbox.getItem(key) ?? kept.get(key) ?? null;
    return text === forgotten ? null : text;
  };
  const keys = (): string[] =>
    [...new Set([...waiting(), ...kept.keys()])].filter((key) => read(key) !== null);

  return {
    ready,
    async connect(to) {
      const known = await to.call('memory/read', {});
      if (known.ok) {
        for (const [key, text] of Object.entries(known.value.kept)) kept.set(key, text);
        host = to;
        await Promise.all(waiting().map((key) => send(key, outbox.getItem(key) ?? forgotten)));
      }
      arrived();
    },
    get length() {
      return keys().length;
    },
    key: (at) => keys()[at] ?? null,
    getItem: read,
    setItem: put,
    removeItem: (key) => {
      if (read(key) !== null) put(key, forgotten);
    },
  };
}

export const windowMemory: WindowMemory = createWindowMemory(window.localStorage);
