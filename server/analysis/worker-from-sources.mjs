import { register } from 'tsx/esm/api';

register();
const { default: analyse, onDemand } = await import('./worker.ts');

/** The worker of development and tests; the build has one of its own. */
export default analyse;
export { onDemand };
