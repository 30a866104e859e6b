export { analyseCompressors } from './compressors.ts';
export { meta } from './meta.ts';
/** The valve of a circuit; the compressors of its group are judged by `analyseCompressors`. */
export { analyseValve as analyse } from './valves.ts';
