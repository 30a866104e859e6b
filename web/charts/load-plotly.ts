import plotSheet from '../styles/plot.css?url';

export type Plotly = typeof import('plotly.js-dist-min');

let loading: Promise<Plotly> | null = null;

/**
 * plotly.js adds rules to the style element of this id and makes it where there is none, which the content security
 * policy forbids. A style sheet of our own under that id takes the rules instead.
 */
async function addPlotSheet(): Promise<void> {
  const link = document.createElement('link');
  link.id = 'plotly.js-style-global';
  link.rel = 'stylesheet';
  link.href = plotSheet;
  await new Promise((resolve, reject) => {
    link.addEventListener('load', resolve, { once: true });
    link.addEventListener('error', () => reject(new Error('The style of the plot did not load.')), {
      once: true,
    });
    document.head.append(link);
  });
}

/** The map part of plotly.js 4.1 writes a style element unless one of this id is there; no map is drawn here. */
const mapStyleId = 'ce8d464691048653ffe3a57c6c18ab566e8366f186677868cf724621a857b4fe';

function claimMapStyle(): void {
  const claim = document.createElement('meta');
  claim.id = mapStyleId;
  document.head.append(claim);
}

/** Fetched when it is first wanted, so that lists stand on the screen before it. */
export function loadPlotly(): Promise<Plotly> {
  loading ??= addPlotSheet().then(() => {
    claimMapStyle();
    return import('plotly.js-dist-min');
  });
  loading.catch(() => {
    loading = null;
  });
  return loading;
}
