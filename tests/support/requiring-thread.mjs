import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/** What require() of an ES module comes to in this thread: `allowed`, or the code of its refusal. */
export default function outcome() {
  try {
    require('./required-module.mjs');
    return 'allowed';
  } catch (error) {
    return error.code;
  }
}
