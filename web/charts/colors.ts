/** Dash patterns in screen pixels, one a probe in its order, so that no line is known by its colour alone. */
const dashes = [
  'solid',
  '7px,3px',
  '2px,3px',
  '11px,3px,2px,3px',
  '5px,2px,1px,2px,1px,2px',
  '16px,4px',
] as const;

export interface ProbeStyle {
  readonly color: string;
  readonly dash: string;
}

/** The page's colours, as they are now: light, dark or print. */
export interface PlotColors {
  readonly paper: string;
  readonly ink: string;
  readonly quiet: string;
  readonly rule: string;
  readonly act: string;
  readonly watch: string;
  readonly note: string;
  readonly defrost: string;
  readonly setPoint: string;
  readonly strip: string;
  probe(index: number): ProbeStyle;
}

export function readColors(): PlotColors {
  const style = getComputedStyle(document.documentElement);
  const color = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    paper: color('card'),
    ink: color('ink'),
    quiet: color('quiet'),
    rule: color('rule'),
    act: color('act'),
    watch: color('watch'),
    note: color('note'),
    defrost: color('defrost'),
    setPoint: color('set-point'),
    strip: color('series-5'),
    probe: (index) => ({
      color: color(`series-${index % dashes.length}`),
      dash: dashes[(index + Math.floor(index / dashes.length)) % dashes.length]!,
    }),
  };
}

/** `#rrggbb`, or `#rgb` as a style sheet may shorten it, at an opacity. */
export function faded(color: string, opacity: number): string {
  const digits = color.slice(1);
  const full = digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits;
  const alpha = Math.round(opacity * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${full}${alpha}`;
}
