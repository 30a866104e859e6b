import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where uploads and results are kept unless `--data` or `RIMELOG_DATA` say otherwise: the place that the
 * system has for a user's application data.
 */
export function defaultDataFolder(
  environment: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): string {
  const told = environment['RIMELOG_DATA'];
  if (told) return told;
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'rimelog');
  if (platform === 'win32') {
    return join(environment['LOCALAPPDATA'] || join(home, 'AppData', 'Local'), 'rimelog');
  }
  return join(environment['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'rimelog');
}
