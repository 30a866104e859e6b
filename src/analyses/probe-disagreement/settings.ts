import type { Setting } from '../analysis.ts';

const measured = 'measured by npm run evaluate';
const practice = 'common practice, no source';

export const settings = {
  minimumShift: {
    value: 0.75,
    unit: 'K',
    meaning:
      'smallest lasting change between two neighbours that is looked at, on daily medians of settled air',
    source: measured,
  },
  scalesOfNoise: {
    value: 4,
    unit: '1',
    meaning: 'the change must also be this many robust scales of the day-to-day scatter of the pair',
    source:
      'Menne & Williams 2009, J. Climate 22:1700 (pairwise comparison); factor measured by npm run evaluate',
  },
  explainedShare: {
    value: 0.6,
    unit: '1',
    meaning: 'share of the squared day-to-day variation of the pair that the change must explain',
    source: measured,
  },
  voteShare: {
    value: 0.66,
    unit: '1',
    meaning: 'share of its pairs that must have changed before one probe is named',
    source: 'Menne & Williams 2009, J. Climate 22:1700 (pairwise comparison)',
  },
  acuteShift: {
    value: 2,
    unit: 'K',
    meaning: 'change of a probe against its neighbours that is reported within hours',
    source: measured,
  },
  acuteHours: {
    value: 4,
    unit: 'h',
    meaning: 'how long such a change must have lasted until the end of the record',
    source: practice,
  },
  episodeShift: {
    value: 2.5,
    unit: 'K',
    meaning: 'smallest departure from its neighbours that counts when it passes within hours or days',
    source: measured,
  },
  episodeHours: {
    value: 2,
    unit: 'h',
    meaning: 'how long a passing departure must last: a stocking is over sooner',
    source: practice,
  },
  jumpShare: {
    value: 0.7,
    unit: '1',
    meaning:
      'share of a passing departure made from one reading to the next, above which it is a contact and no air',
    source: 'bias weeks of de Bruijn et al., SENSORNETS 2016 (0.9 and more; clean weeks mostly below 0.5)',
  },
  looseContact: {
    value: 5,
    unit: 'K',
    meaning:
      'largest of the passing departures above which a probe that jumps away again and again is a bad contact',
    source: 'clean weeks of de Bruijn et al., SENSORNETS 2016 (one mote of ten jumps by up to 4.7 K)',
  },
  wideSpread: {
    value: 3.3,
    unit: 'K',
    meaning: 'distance between neighbours since the first day above which it is more than a harmless habit',
    source: practice,
  },
  flutterGrowth: {
    value: 1.1,
    unit: '1',
    meaning:
      'scatter against what this probe and its neighbours usually have, above which it may have begun to flutter',
    source: measured,
  },
  flutterAlone: {
    value: 0.5,
    unit: '1',
    meaning:
      'share of the scatter that no neighbour shares, above which it is no cycle: neighbours fed by one valve jump together',
    source: measured,
  },
  flutterLeast: {
    value: 0.2,
    unit: 'K',
    meaning: 'smallest scatter from sample to sample, over the usual one, that counts as flutter',
    source: measured,
  },
  stuckHours: {
    value: 6,
    unit: 'h',
    meaning:
      'a reading that has not moved for so long, while its neighbours went through a defrost, is stuck',
    source:
      'flat-line test, QARTOD Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data 2.0 (2016)',
  },
  tremblingHours: {
    value: 24,
    unit: 'h',
    meaning:
      'the same of a reading that only trembles in its last digits: so long holds every defrost of a day',
    source: practice,
  },
  railJump: {
    value: 14,
    unit: 'K',
    meaning:
      'distance of a motionless reading from what the probe read before, or from all its neighbours, at which it is an open or shorted lead and not stuck',
    source: practice,
  },
  silentHours: {
    value: 2,
    unit: 'h',
    meaning:
      'a probe without readings for so long, while its neighbours go on, has lost its lead or its channel',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
