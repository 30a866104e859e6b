import type { FaultRequest } from './store-request.ts';

/** Minutes that a creeping fault takes: those asked for, else the days drawn, held within four fifths of what is left of the log. */
export function minutesItTakes(request: FaultRequest, drawnDays: number, left: number): number {
  if (request.overDays !== undefined) return Math.round(request.overDays * 1440);
  return Math.min(Math.round(drawnDays * 1440), Math.round(0.8 * left));
}

/**
 * What acts on a circuit minute by minute, with the time of its growth (from `onset`, `over` minutes long) bent: at a share s of
 * that time it does what it would do at s^bend, so an even growth s becomes s^bend.
 */
export function bent<T, Rest extends unknown[]>(
  act: (on: T, minute: number, ...rest: Rest) => void,
  onset: number,
  over: number,
  bend = 1,
): (on: T, minute: number, ...rest: Rest) => void {
  if (bend === 1) return act;
  return (on, minute, ...rest) => {
    const share = (minute - onset) / over;
    act(on, share > 0 && share < 1 ? onset + over * share ** bend : minute, ...rest);
  };
}
