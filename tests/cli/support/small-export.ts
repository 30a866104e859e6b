/** Two days of a small invented store, every five minutes: two circuits, cycling between 34 and 38 °F. */
export function smallExport(days = 2): string {
  const lines = [
    'Time,M01 air A (°F),M01 air B (°F),M01 set (°F),M02 air A (°F),M02 air B (°F),S1 suction (psig)',
  ];
  const start = Date.UTC(2026, 8, 1);
  for (let i = 0; i < days * 288; i++) {
    const time = new Date(start + i * 300_000).toISOString().slice(0, 19).replace('T', ' ');
    const swing = 2 * Math.sin((2 * Math.PI * i) / 5);
    const cells = [36 + swing, 36.4 + swing, 36, 34 - swing, 34.3 - swing, 45 + swing].map((value) =>
      value.toFixed(1),
    );
    lines.push([time, ...cells].join(','));
  }
  return `${lines.join('\n')}\n`;
}
