import { setFlagsFromString } from 'node:v8';

/**
 * V8 doubles its room for new objects whenever as much has survived as the room holds, and gives nothing back. Once
 * this was called, after the code is loaded that lives to the end, it stays as large as it is. A long command, which
 * makes much that dies at once, ends with a tenth less memory for it (docs/reference/benchmark.md); an engine without
 * the setting says so and goes on.
 */
export function holdYoungGeneration(): void {
  setFlagsFromString('--semi-space-growth-factor=1');
}
