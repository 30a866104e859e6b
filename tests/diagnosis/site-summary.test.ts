import { describe, expect, it } from 'vitest';
import { one, rackHigh } from './support.ts';

const kiloPascal = (name: string, value: number) => ({ name, value, low: null, high: null, unit: 'kPa' });
const standing = (against: string) => [kiloPascal('suctionLevel', 561), kiloPascal(against, 475)];

describe('the sentence on a rack', () => {
  it('says what a gauge shows there, and what it should', () => {
    const over = one(
      rackHigh({ shape: 'high', measures: standing('suctionTarget'), features: { overTarget: 1 } }),
    );
    expect(over.summary).toMatch(/stands above its target \(66\.\d psig against 54\.\d psig\) since/);
    const usual = one(
      rackHigh({ shape: 'high', measures: standing('suctionUsual'), features: { overTarget: 0 } }),
    );
    expect(usual.summary).toMatch(/stands above its usual level \(66\.\d psig against 54\.\d psig\) since/);
  });

  it('says how far condensing is up, where the refrigerant tells', () => {
    const measures = [{ name: 'condensingRise', value: 5, low: null, high: null, unit: 'K' }];
    const told = (refrigerantKnown: number) =>
      one(rackHigh({ shape: 'condensing-high', measures, features: { refrigerantKnown } })).summary;
    expect(told(1)).toContain('at the same weather (by 9.0 °F saturated) since');
    expect(told(0)).toContain('at the same weather since');
  });

  it('says how often it trips, and how little liquid there is', () => {
    const per = (name: string, value: number, unit: string) => ({ name, value, low: null, high: null, unit });
    const trips = [per('tripsADay', 9, '/d'), per('usualTripsADay', 2, '/d')];
    expect(one(rackHigh({ shape: 'low-pressure-trips', measures: trips })).summary).toContain(
      'again and again (9 a day against 2 a day) since',
    );
    const level = [per('level', 2, '%'), per('usualLevel', 7, '%')];
    expect(one(rackHigh({ shape: 'level-low', measures: level })).summary).toContain(
      'under its usual range (2 % against 7 %) since',
    );
  });

  it('leaves out what was not measured', () => {
    expect(one(rackHigh({ measures: [kiloPascal('suctionLevel', 561)] })).summary).not.toContain('psig');
  });
});
