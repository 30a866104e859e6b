import type { ProblemText, Progress } from './json.ts';
import { Refusal, readJson } from './server.ts';

/**
 * Begins what the server makes when it is asked for, and follows it; `address` is that of the answer. Resolves with
 * the address once the answer is there, rejects with a Refusal; never settles once `signal` is aborted.
 */
export function followWork(
  address: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<string> {
  const [path = '', query] = address.split('?', 2);
  const events = new EventSource(`${path}/events${query === undefined ? '' : `?${query}`}`);
  signal.addEventListener('abort', () => events.close());
  const dataOf = <T>(event: Event): T => JSON.parse((event as MessageEvent<string>).data) as T;
  return new Promise((resolve, reject) => {
    const end = (settle: () => void): void => {
      events.close();
      if (!signal.aborted) settle();
    };
    events.addEventListener('progress', (event) => onProgress(dataOf<Progress>(event)));
    events.addEventListener('ready', (event) => end(() => resolve(dataOf<{ result: string }>(event).result)));
    events.addEventListener('failed', (event) => end(() => reject(new Refusal(dataOf<ProblemText>(event)))));
    // The reason of a refused stream is not told to a page; the address of the answer gives it.
    events.addEventListener('error', () => {
      if (events.readyState !== EventSource.CLOSED) return;
      end(() => readJson(address, signal).then(() => resolve(address), reject));
    });
  });
}
