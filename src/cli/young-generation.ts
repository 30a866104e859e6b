import { setFlagsFromString } from 'node:v8';

/**
 * V8 doubles its room for new objects whenever as much has survived as the room holds, and gives nothing back. Once
 * this was called it stays as large as it is. A long command, whose later stages make much that dies at once, ends with
 * a tenth less memory for it (docs/reference/benchmark.md); an engine without the setting does nothing.
 */
export function holdYoungGeneration(): void {
  setFlagsFromString('--semi-space-growth-factor=1');
}
