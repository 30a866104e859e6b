import type { Response } from 'express';
import { addressesOf } from './addresses.ts';

/** 202: the export is stored and its analysis runs or waits. */
export function answerAccepted(response: Response, id: string): void {
  const addresses = addressesOf(id);
  response
    .status(202)
    .location(addresses.self)
    .json({ id, ...addresses });
}
