import type { Minutes } from '../units/quantities.ts';

/**
 * Time constants of the lag view. Goods follow the air with τ = m·c ÷ (h·A): with h about 8 W/m²K a bag of salad
 * comes to some 25 minutes and a 500 g test pack to some 95 (calculated here, no measurement), so 20, 60 and 120
 * minutes bracket them.
 */
export const lagMinutes: readonly Minutes[] = [20, 60, 120];
/** The lag starts at the mean of this long a stretch, and this many time constants of it are not counted. */
export const lagStartMinutes: Minutes = 60;
export const lagSettleFactor = 3;
/** After a gap longer than this the lag starts anew: nobody knows what the air did meanwhile. */
export const longestLagGapMinutes: Minutes = 30;
