export interface EndLabel {
  readonly text: string;
  readonly y: number;
  readonly name: string;
}

/** Moves labels apart until each has `spacing` to itself, inside 0 to `height`, their order kept. */
export function spreadLabels(
  labels: readonly EndLabel[],
  height: number,
  spacing: number,
): readonly EndLabel[] {
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  const top = spacing / 2;
  const placed: number[] = [];
  for (const { y } of sorted) placed.push(Math.max(y, (placed.at(-1) ?? top - spacing) + spacing));
  let ceiling = height - 2;
  for (let i = placed.length - 1; i >= 0; i--) {
    placed[i] = Math.min(placed[i]!, ceiling);
    ceiling = placed[i]! - spacing;
  }
  return sorted.map((label, index) => ({ ...label, y: placed[index]! }));
}

/** `M01 air B (°F)` on the page of M01 is `air B`; long names keep both ends. */
export function shortPointName(point: string, circuit: string, longest = 18): string {
  const own = point.startsWith(circuit) ? point.slice(circuit.length).replace(/^[\s:._-]+/, '') : point;
  const bare = own.replace(/\s*[([][^()[\]]*[)\]]$/, '');
  const name = [...(bare === '' ? point : bare)];
  if (name.length <= longest) return name.join('');
  const half = Math.floor((longest - 1) / 2);
  return `${name.slice(0, half).join('')}…${name.slice(-half).join('')}`;
}
