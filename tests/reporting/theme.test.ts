import { describe, expect, test } from 'vitest';
import { darkTheme, dashes, lightTheme, type Theme } from '../../src/reporting/html/theme.ts';

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function luminance(color: string): number {
  const channels = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16) / 255);
  const [red, green, blue] = channels.map((value) =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

describe.each<[string, Theme]>([
  ['light', lightTheme],
  ['dark', darkTheme],
])('the %s theme', (_, theme) => {
  const grounds = [theme.paper, theme.card];

  test('reads at 4.5:1 or more (WCAG 2.2, 1.4.3), line labels included', () => {
    const texts = [theme.ink, theme.quiet, theme.accent, theme.act, theme.watch, theme.note, ...theme.series];
    for (const ground of grounds) {
      for (const text of texts)
        expect(contrast(text, ground), `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('draws lines at 3:1 or more (WCAG 2.2, 1.4.11), over shaded defrosts too', () => {
    for (const ground of [...grounds, theme.defrost]) {
      for (const line of [...theme.series, theme.setPoint]) {
        expect(contrast(line, ground), `${line} on ${ground}`).toBeGreaterThanOrEqual(3);
      }
    }
  });
});

test('every probe has a dash pattern of its own beside its colour', () => {
  expect(new Set(dashes).size).toBe(lightTheme.series.length);
  expect(darkTheme.series.length).toBe(lightTheme.series.length);
});
