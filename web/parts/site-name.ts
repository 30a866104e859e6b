import { visible } from '../dom.ts';

/** Without a site file nobody has said what the site is called. */
export function siteName(site: string): string {
  return visible(site) || 'Site without a name';
}
