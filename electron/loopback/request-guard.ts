import { randomBytes, timingSafeEqual } from 'node:crypto';

/** Who may talk to the loopback server. Everything is refused unless it passes every check. */
export interface RequestGuard {
  /** Opens the door once: the address printed or opened at start carries it. */
  readonly startCode: string;
  check(request: Request): 'ok' | 'wrong-host' | 'cross-site' | 'no-token';
  /** The cookie for a right start code, which is spent by that; null for a wrong or spent one. */
  exchange(code: string): string | null;
}

const same = (a: string, b: string): boolean => {
  const left = Buffer.from(a);
  const right = Buffer.from(b);
  return left.length === right.length && timingSafeEqual(left, right);
};

const cookieName = 'submark';

/**
 * The guard of one start of the server. Host must be the very address served (a name that was re-pointed to 127.0.0.1
 * fails here); Origin and Sec-Fetch-Site, where a browser sends them, must be our own; the token rides in an
 * HttpOnly, SameSite=Strict cookie and so never in an address.
 */
export function createRequestGuard(port: () => number): RequestGuard {
  let startCode: string | null = randomBytes(24).toString('base64url');
  const first = startCode;
  const token = randomBytes(32).toString('base64url');
  return {
    startCode: first,
    check(request) {
      const authority = `127.0.0.1:${port()}`;
      if (request.headers.get('Host') !== authority) return 'wrong-host';
      const origin = request.headers.get('Origin');
      if (origin !== null && origin !== `http://${authority}`) return 'cross-site';
      const site = request.headers.get('Sec-Fetch-Site');
      const opening = request.headers.get('Sec-Fetch-Mode') === 'navigate' && request.method === 'GET';
      if (site !== null && site !== 'same-origin' && site !== 'none' && !opening) return 'cross-site';
      const cookies = (request.headers.get('Cookie') ?? '').split(/;\s*/);
      const mine = cookies.find((each) => each.startsWith(`${cookieName}-${port()}=`));
      return mine && same(mine.slice(mine.indexOf('=') + 1), token) ? 'ok' : 'no-token';
    },
    exchange(code) {
      if (startCode === null || !same(code, startCode)) return null;
      startCode = null;
      return `${cookieName}-${port()}=${token}; HttpOnly; SameSite=Strict; Path=/`;
    },
  };
}
