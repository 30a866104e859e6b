import { z } from 'zod';

/** The site file (contract §2) as a schema; `site.schema.json` is generated from it. */

const point = z
  .string()
  .trim()
  .min(1)
  .describe(
    'A point: its column header as in the export, trimmed, or FILE-STEM:HEADER where several files carry it.',
  );
const points = z.array(point);
const number = z.number();
const target = z
  .union([number, z.strictObject({ point })])
  .describe('A number, or { point: "…" } where the export logs it.');
const clockTime = z
  .string()
  .regex(/^([01]?\d|2[0-3]):[0-5]\d$/)
  .describe('Local time of day, HH:MM.');

const units = z
  .strictObject({
    temperature: z.enum(['degF', 'degC', 'K']).optional(),
    pressure: z.enum(['psig', 'psia', 'bar', 'barg', 'kPa']).optional(),
  })
  .describe('Units of the columns that say nothing themselves.');

const suctionGroup = z.strictObject({
  id: z.string().trim().min(1),
  class: z.enum(['medium', 'low']).optional().describe('Medium (chilled) or low (frozen) temperature.'),
  pressure: point.optional().describe('The suction pressure point.'),
  pressureSetPoint: target.optional(),
  compressors: points.optional().describe('Run status points, one a compressor.'),
  discharge: point.optional().describe('The discharge (head) pressure point.'),
  liquidLevel: point.optional().describe('The receiver level point.'),
  others: z.record(z.string(), point).optional().describe('Any further rack point by a name of your choice.'),
});

const rack = z.strictObject({
  id: z.string().trim().min(1),
  refrigerant: z.string().trim().min(1).optional().describe('ASHRAE number, R-448A.'),
  suctionGroups: z.array(suctionGroup).optional(),
});

const defrost = z.strictObject({
  kind: z.enum(['off-cycle', 'electric', 'hot-gas']).optional(),
  status: point.optional().describe('On while defrosting.'),
  perDay: number.positive().max(48).optional(),
  minutes: number.positive().max(600).optional(),
  starts: z.array(clockTime).optional().describe('Scheduled starts, local time.'),
});

const circuit = z.strictObject({
  id: z.string().trim().min(1),
  name: z.string().trim().min(1).optional(),
  suctionGroup: z.string().trim().min(1).optional().describe('The id of a suction group above.'),
  setPoint: target.optional(),
  differential: number
    .nonnegative()
    .optional()
    .describe('The dead band of the control, in temperature units.'),
  controls: z
    .string()
    .trim()
    .min(1)
    .optional()
    .describe('What the control steers on: average, warmest, coldest, or one of the probes.'),
  probes: points.describe('Air probes in the order they stand along the line-up, where known.'),
  returnAir: points.optional(),
  coilOut: points.optional(),
  product: points.optional(),
  defrostTermination: points.optional(),
  valve: point
    .optional()
    .describe('Liquid solenoid, suction stop or expansion valve: on/off or per cent open.'),
  superheat: point.optional(),
  defrost: defrost.optional(),
  limits: z
    .strictObject({ high: number, minutes: number.nonnegative().optional() })
    .optional()
    .describe('The alarm in force today.'),
});

export const siteFileSchema = z
  .strictObject({
    site: z.string().trim().min(1).optional().describe('The name of the store.'),
    timeZone: z
      .string()
      .trim()
      .min(1)
      .optional()
      .describe('IANA time zone; exports without an offset are wall-clock time there.'),
    altitude: number
      .min(-500)
      .max(6000)
      .optional()
      .describe('Metres above sea level; sets the air pressure by which gauge readings are raised.'),
    units: units.optional(),
    racks: z.array(rack).optional(),
    circuits: z.array(circuit).optional(),
  })
  .describe('What the columns of the exports of one site are.');

export type SiteFile = z.output<typeof siteFileSchema>;
export type SiteCircuit = NonNullable<SiteFile['circuits']>[number];
export type SiteRack = NonNullable<SiteFile['racks']>[number];
export type SiteSuctionGroup = NonNullable<SiteRack['suctionGroups']>[number];
export type SiteTarget = z.output<typeof target>;
