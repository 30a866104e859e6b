/** Colours by their task, for a light and a dark page. Shared by the report and the served page. */
export interface Theme {
  readonly paper: string;
  readonly card: string;
  readonly ink: string;
  readonly quiet: string;
  readonly rule: string;
  readonly accent: string;
  readonly act: string;
  readonly watch: string;
  readonly note: string;
  readonly defrost: string;
  readonly setPoint: string;
  /** Probes in their order; repeated after the last, where the dash pattern tells them apart. */
  readonly series: readonly string[];
}

/** Contrasts (WCAG 2.2, 1.4.3 and 1.4.11): text 4.5:1, lines 3:1, on `paper` and on `card`; tested. */
export const lightTheme: Theme = {
  paper: '#f4f6f6',
  card: '#ffffff',
  ink: '#16232b',
  quiet: '#52616a',
  rule: '#d5dcde',
  accent: '#1c5f7a',
  act: '#a12a1b',
  watch: '#825400',
  note: '#52616a',
  defrost: '#d9e6ee',
  setPoint: '#5a6870',
  series: ['#0b62a4', '#c04a0c', '#047857', '#8c3a94', '#6f5e00', '#3d4a52'],
};

export const darkTheme: Theme = {
  paper: '#0e1518',
  card: '#151e22',
  ink: '#e4ebed',
  quiet: '#9fb0b8',
  rule: '#2b383e',
  accent: '#7cc4de',
  act: '#ff8f7d',
  watch: '#f0b54a',
  note: '#9fb0b8',
  defrost: '#22333d',
  setPoint: '#a8b6bd',
  series: ['#6cb6f5', '#ff9d66', '#45d0a2', '#e49be6', '#d8c750', '#c3cfd5'],
};

/** The reader's own sans-serif: nothing is fetched. */
export const sans = "system-ui,-apple-system,'Segoe UI',Roboto,'Noto Sans','Liberation Sans',sans-serif";

/** Dash patterns in screen pixels, one a probe, so that no line is known by its colour alone. */
export const dashes = ['none', '7 3', '2 3', '11 3 2 3', '5 2 1 2 1 2', '16 4'] as const;

/** The colours of one theme as custom properties. */
export function declarations(theme: Theme): string {
  const { series, ...single } = theme;
  const named = Object.entries(single).map(([name, color]) => `--${kebab(name)}:${color}`);
  return [...named, ...series.map((color, index) => `--series-${index}:${color}`)].join(';');
}

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** The colours as custom properties; print is always light. */
export function themeCss(): string {
  return `:root{color-scheme:light dark;${declarations(lightTheme)}}
@media screen and (prefers-color-scheme:dark){:root{${declarations(darkTheme)}}}`;
}
