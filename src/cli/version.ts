export { version } from '../pipeline/version.ts';
