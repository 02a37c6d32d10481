import http from 'node:http';

export interface Answer {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly text: string;
}

export interface RawRequest {
  readonly method?: string;
  readonly headers?: object;
  readonly body?: string;
}

/** A request as raw as an attacker's: any header, any path, nothing tidied up. */
export function rawRequest(
  port: number,
  target: string,
  { method = 'GET', headers = {}, body = '' }: RawRequest = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = http.request(
      {
        host: '127.0.0.1',
        port,
        path: target,
        method,
        setHost: false,
        headers: { Host: `127.0.0.1:${port}`, ...headers },
      },
      (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            text: Buffer.concat(parts).toString('latin1'),
          }),
        );
      },
    );
    request.on('error', reject);
    request.end(body);
  });
}
