const base = '/api/v1/exports';

/** Addresses of one export, as answers name them. */
export function addressesOf(id: string) {
  return {
    self: `${base}/${id}`,
    events: `${base}/${id}/events`,
    findings: `${base}/${id}/findings`,
    report: `${base}/${id}/report`,
    page: `/#/exports/${id}`,
  };
}
