/** Stands on every report: what the numbers are, and what they are not. */
export const airNotFood =
  'These are air temperatures at the probes, not food temperatures. Whether goods can be sold is decided by ' +
  "a calibrated thermometer in the product, the store's own plan and the local food code, never by this report.";
