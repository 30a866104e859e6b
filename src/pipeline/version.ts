declare const __RIMELOG_VERSION__: string | undefined;

/** Put in by the build; `development` when run from the sources. */
export const version = typeof __RIMELOG_VERSION__ === 'string' ? __RIMELOG_VERSION__ : 'development';
