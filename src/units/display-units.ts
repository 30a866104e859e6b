/** The units in which a site wants to read its findings. Gauge pressures stand above the site's atmosphere. */
export interface DisplayUnits {
  readonly temperature: 'degF' | 'degC' | 'K';
  readonly pressure: 'psig' | 'psia' | 'bar' | 'barg' | 'kPa';
}
